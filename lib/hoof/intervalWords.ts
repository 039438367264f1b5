import { type DisplayUnits, errorDigits, formatQuantity, toDisplay } from '../sheet/display.ts';
import { listed } from '../sheet/listed.ts';
import { cellWord } from '../words/cellWord.ts';
import { counted } from '../words/counted.ts';
import { fixed } from '../words/fixed.ts';
import { midSentence } from '../words/midSentence.ts';
import { say } from '../words/say.ts';
import { wholeNumber } from '../words/wholeNumber.ts';
import type { IntervalData } from './intervalData.ts';
import type { IntervalEffects, IntervalEstimate, IntervalFit } from './intervalModel.ts';
import { isLimb, limbName } from './limbs.ts';
import { measured } from './measured.ts';
import { measures } from './measures/index.ts';

type Asked = Pick<IntervalData, 'outcome' | 'unit' | 'size'>;

/** What the outcome is called inside a sentence: `difference between inside and outside, seen from the front`. */
export function outcomeWords({ outcome, size }: Asked): string {
  const title = [...measures, ...measured].find(({ name }) => name === outcome)?.title;
  if (size && /^wall_level/.test(outcome)) return say`difference between inside and outside, seen from the front`;
  if (size && /^heel_level/.test(outcome)) return say`difference between inside and outside, seen from behind`;
  const plain = title === undefined ? outcome : midSentence(title);
  return size ? say`distance from zero of ${plain}` : plain;
}

/** A number with as many decimals as its standard error deserves. */
export function quantity(value: number, se: number, unit: string, units: DisplayUnits, signed = false): string {
  return formatQuantity(value, unit, units, {
    digits: errorDigits(Math.abs(toDisplay(se, unit, units).value)),
    signed,
  });
}

/** `+0.02 mm to +0.45 mm`: the 95% interval of an estimate. */
export function limitsInWords({ lower, upper, se }: IntervalEstimate, unit: string, units: DisplayUnits): string {
  return say`${quantity(lower, se, unit, units, true)} to ${quantity(upper, se, unit, units, true)}`;
}

function pace({ estimate, se }: IntervalEstimate, asked: Asked, units: DisplayUnits): string {
  const amount = quantity(Math.abs(estimate), se, asked.unit, units);
  const words = outcomeWords(asked);
  if (asked.size) return estimate < 0 ? say`${amount} less ${words}` : say`${amount} more ${words}`;
  return say`${words} going ${amount} further ${estimate < 0 ? say`down` : say`up`}`;
}

/**
 * The answer in a sentence that a rider can repeat, without a full stop. It says what went together, not what made what.
 * @example 'A week longer went with 0.4 mm more difference between inside and outside, seen from the front, within the
 *   same horse (95% interval +0.1 mm to +0.7 mm)'
 */
export function effectSentence({ within }: IntervalEffects, asked: Asked, units: DisplayUnits): string {
  const told = within.lower > 0 || within.upper < 0;
  const sentence = say`A week longer went with ${pace(within, asked, units)}, within the same horse (95% interval ${limitsInWords(within, asked.unit, units)})`;
  return told ? sentence : say`${sentence}; these intervals can’t tell that from none at all`;
}

/** The comparison between horses, and why it answers another question. */
export function betweenSentence({ between }: IntervalEffects, asked: Asked, units: DisplayUnits): string {
  if (between === undefined)
    return say`All horses have the same usual interval, so nothing compares one horse with another.`;
  return say`Between horses, a usual interval a week longer went with ${pace(between, asked, units)} (95% interval ${limitsInWords(between, asked.unit, units)}). That compares horses and not intervals: who is seen how often is nobody’s chance.`;
}

/** Whether the effect is larger than the error of measuring one change. */
export function errorSentence({ within, smallestChange }: IntervalEffects, asked: Asked, units: DisplayUnits): string {
  if (Number.isNaN(smallestChange))
    return say`How large the error of measuring is isn’t known here: readings of the same foot repeated in one sitting would tell.`;
  const change = formatQuantity(smallestChange, asked.unit, units);
  const weeks = smallestChange / Math.abs(within.estimate);
  if (weeks <= 1)
    return say`A single change below ${change} is within the error of measuring its two ends; a week longer goes with more than that.`;
  const reach = weeks > 52 ? say`more than a year` : say`${Math.ceil(weeks)} weeks`;
  return say`A single change below ${change} is within the error of measuring its two ends. At this pace it takes an interval longer by ${reach} to pass that, so one foot at one visit can’t show it; many intervals together can.`;
}

const groupWords: Readonly<Record<string, string>> = {
  'horse:interval': say`intervals of a horse`,
  'horse:limb': say`feet of a horse`,
  horse: say`horses`,
  farrier: say`farriers`,
};

/** What varies between the groups of a random term, in words. */
export function groupName(by: string, term = '(Intercept)'): string {
  const who = Object.hasOwn(groupWords, by) ? groupWords[by] : by;
  return term === '(Intercept)' ? who : say`slopes of ${who}`;
}

/** A fit with a variance at zero is an answer: which one, in words; nothing where there is none. */
export function singularSentence({ singular, random, residualSd }: IntervalEffects): string {
  if (!singular) return '';
  const flat = random.filter(({ sd }) => sd < 1e-5 * residualSd).map(({ by, term }) => groupName(by, term));
  return say`The fit finds no variation of its own between ${listed(flat)} once everything else is counted (an estimate of zero). That is an answer and not a failure; it often means that there are few of them, or that they are alike.`;
}

/** The answer as a finding: whether the effect can be told from none, in words, and what it is held against. */
export function answerWords(answer: IntervalEffects, asked: Asked, units: DisplayUnits) {
  const { lower, upper } = answer.within;
  const told = lower > 0 || upper < 0;
  return {
    subject: told ? say`In these records it goes along` : say`These records can’t tell`,
    sentence: `${effectSentence(answer, asked, units)}.`,
    state: told ? 'raise' : 'unsure',
    against: [
      say`Each horse is compared with itself: the length of an interval against that horse’s own usual one.`,
      say`A 95% interval made this way holds the true effect in about 95 of 100 herds, if the model is right.`,
    ],
  } as const;
}

/** What a term of the model means, in words. */
export function termWords(term: string): string {
  if (term === '(Intercept)') return say`where all below is at its base`;
  if (term === 'interval_within') return say`a week longer, within the same horse`;
  if (term === 'interval_mean') return say`a usual interval a week longer, between horses`;
  const limb = term.replace(/^limb/, '');
  if (term.startsWith('limb') && isLimb(limb)) return say`the ${limbName(limb)}`;
  if (term.startsWith('season')) return say`in ${cellWord('season', term.slice('season'.length))}`;
  return cellWord('shod', term.replace(/^shod/, ''));
}

/** The exact model in words, for whoever wants to repeat it elsewhere. */
export function modelSentence(
  { design, n, missing, random }: IntervalEffects,
  asked: Asked & Pick<IntervalData, 'compared'>,
): string {
  const names: Readonly<Record<string, string>> = {
    interval_within: say`the length of the interval in weeks beyond the mean of its horse`,
    interval_mean: say`that mean`,
    limb: say`limb`,
    season: say`quarter of the year`,
    shod: say`shod or bare`,
    farrier: say`farrier`,
  };
  const fixed = design.fixed.map((name) => names[name]);
  const groups = random.map(({ by, term }) => groupName(by, term));
  const what = asked.size ? say`Change of the size (the value without its sign)` : say`Change`;
  return [
    say`${what} of ${asked.outcome} from the start to the end of an interval (${cellWord('compared', asked.compared)}), one row an interval of one foot, ${n} rows.`,
    say`Fixed effects: ${listed(fixed)}; categories against their first level. Random intercepts${random.some(({ term }) => term !== '(Intercept)') ? say` and uncorrelated slopes` : ''}: ${listed(groups)}.`,
    say`Restricted maximum likelihood; degrees of freedom by Satterthwaite; 95% intervals from Student’s t.`,
    missing > 0
      ? counted(missing, {
          one: say`${missing} row left out because a circumstance in the model is not known for it.`,
          other: say`${missing} rows left out because a circumstance in the model is not known for them.`,
        })
      : '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}

/** A p in words: three decimals, or that it is smaller. */
export function pWords(p: number): string {
  return p < 0.001 ? say`below 0.001` : fixed(p, 3);
}

/** The checks, one sentence each. */
export function checkSentences({ within, checks }: IntervalFit, asked: Asked, units: DisplayUnits): string[] {
  const { permutation, robust, without, residuals, ownSlopesP } = checks;
  const said = (value: number) => quantity(value, within.se, asked.unit, units, true);
  const ordered = [...without].sort((a, b) => a.estimate - b.estimate);
  const [least, most] = [ordered[0], ordered[ordered.length - 1]];
  const lines = [
    say`**Shuffling**: were the lengths of a horse’s intervals handed out by chance, an effect as far from zero would come up with p ${pWords(permutation.p)} (${wholeNumber(permutation.arrangements)} ${permutation.exact ? say`arrangements, all there are` : say`drawn by lot`}); the model says p ${pWords(within.p)}.`,
    say`**A slope that wild values can’t bend** (the weighted median of the slopes between any two intervals of one foot): ${said(robust.slope)} a week, 95% interval ${said(robust.lower)} to ${said(robust.upper)}.`,
  ];
  if (ordered.length > 1)
    lines.push(
      say`**Without any one horse** the effect lies between ${said(least.estimate)} (without ${escaped(least.horse)}) and ${said(most.estimate)} (without ${escaped(most.horse)}).`,
    );
  lines.push(
    residuals.straightness > 0.99
      ? say`**What is left over** is spread much like a normal distribution, as the model takes it to be.`
      : say`**What is left over** is not spread like a normal distribution: trust the shuffling more than the model’s p.`,
    ownSlopesP < 0.05
      ? say`**Horses differ in their slopes** (p ${pWords(ownSlopesP)}): let every horse have its own, above; the interval then allows for it.`
      : say`**Do horses differ in their slopes?** Not so that these intervals would show it (p ${pWords(ownSlopesP)}).`,
  );
  return lines;
}

function escaped(name: string): string {
  return name.replace(/[\\*[\]]/g, '\\$&');
}

const circumstances: Readonly<Record<string, string>> = {
  farrier: say`the farrier`,
  shod: say`shoeing`,
  season: say`the season`,
};

/** A comparison model, `without farrier and season`, in words. */
function modelWords(model: string): string {
  const names = Object.keys(circumstances)
    .filter((name) => model.includes(name))
    .sort((a, b) => model.indexOf(a) - model.indexOf(b));
  return say`without ${listed(names.map((name) => circumstances[name]))}`;
}

/** Outcomes for which zero is the middle. */
const signed = /_level_|_minus_|_over_/;

/** What could explain an effect, or hide one, without the interval having to do with it. */
export function explanationSentences(
  { design, checks, within, between }: IntervalFit,
  asked: Asked,
  units: DisplayUnits,
): string[] {
  const said = (value: number) => quantity(value, within.se, asked.unit, units, true);
  const others = checks.other.map(({ model, estimate }) => `${modelWords(model)} ${said(estimate)}`);
  const { days, p } = checks.soonerWhenBad;
  // A ratio differs by tenths; everything else by whole units.
  const one = asked.unit === '1' ? 0.1 : 1;
  const lines = [
    say`**Season, shoeing and farrier** change along with the interval. ${others.length === 0 ? say`They are the same for all these intervals, or not known.` : say`With all that is known of them the effect is ${said(within.estimate)}; ${listed(others)}.`}`,
  ];
  if (design.farrierAs === 'not in the model')
    lines.push(say`**The farrier** is not in the model: one alone is named here, or too few are.`);
  else
    lines.push(
      say`**The farrier** is in the model because most measures differ between farriers, and between two trims by the same hand (Kummer and others 2009: six farriers). What it gives for each is not listed: their horses differ too, so it is no score.`,
    );
  if (design.notKnown.length > 0)
    lines.push(
      say`Known for too few intervals to be in the model: ${listed(design.notKnown.map((name) => circumstances[name]))}.`,
    );
  if (Number.isFinite(days))
    lines.push(
      say`**Were feet seen sooner because they were bad?** An interval that started ${formatQuantity(one, asked.unit, units)} ${asked.size || signed.test(asked.outcome) ? say`further from zero` : say`higher`} was ${fixed(Math.abs(days * one), 1)} days ${days < 0 ? say`shorter` : say`longer`} within the same horse (p ${pWords(p)}). ${p < 0.05 ? say`So how a foot stood had to do with when it was seen again, and the effect of the interval can’t be told apart from that.` : say`That is within what chance gives.`}`,
    );
  if (between !== undefined)
    lines.push(
      say`**Which horses are seen how often** is a choice that somebody made for a reason. It stands in the effect between horses and stays out of the one within.`,
    );
  return lines;
}

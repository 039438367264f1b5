import { listed } from '../sheet/listed.ts';
import {
  chiSquared,
  type FittedModel,
  fittedValues,
  leaveOneOut,
  type MixedModelSpec,
  median,
  mixedModel,
  normalQuantiles,
  permuteWithin,
  rSquared,
  theilSenWithin,
} from '../stats/index.ts';
import type { IntervalData } from './intervalData.ts';
import { horseTerm, type IntervalDesign, intervalDesign } from './intervalDesign.ts';
import { errorsBeyond } from './verdict.ts';

export interface IntervalOptions {
  /** Whether every horse gets a slope of its own, around the herd's; false where left out. */
  readonly ownSlopes?: boolean;
  /** Of the permutations and the bootstrap, 1 where left out. */
  readonly seed?: number;
  /** How many permutations are drawn, 9,999 where left out. */
  readonly draws?: number;
}

/** A number from the model with its 95% interval, in the outcome's unit (for one week more). */
export interface IntervalEstimate {
  readonly estimate: number;
  readonly se: number;
  readonly df: number;
  readonly t: number;
  readonly p: number;
  readonly lower: number;
  readonly upper: number;
}

/** What the herd's intervals say, or why they say nothing yet. Plain data throughout. */
export type IntervalAnswer = TooLittle | IntervalFit;

export interface TooLittle {
  readonly kind: 'too little';
  /** A sentence without a full stop. */
  readonly reason: string;
}

/** What the model says of the intervals as a whole. */
export interface IntervalEffects {
  readonly terms: readonly (IntervalEstimate & { readonly term: string })[];
  /** A week longer within the same horse; and a usual interval a week longer, between horses, where horses differ in it. */
  readonly within: IntervalEstimate;
  readonly between?: IntervalEstimate;
  readonly random: readonly { readonly by: string; readonly term: string; readonly sd: number }[];
  readonly residualSd: number;
  readonly singular: boolean;
  readonly dropped: readonly string[];
  readonly design: Pick<IntervalDesign, 'fixed' | 'random' | 'notKnown' | 'farrierAs'>;
  readonly n: number;
  /** Rows left out because a circumstance that is in the model is not known. */
  readonly missing: number;
  /** A single change smaller than this is within its error of measuring, 95 in 100; `NaN` where that is unknown. */
  readonly smallestChange: number;
}

export interface IntervalFit extends IntervalEffects {
  readonly kind: 'fitted';
  readonly rSquared: { readonly marginal: number; readonly conditional: number };
  /** Which entries of the data are in the model; and, for these, weeks beyond the horse's mean, that mean, and the fit. */
  readonly rows: Int32Array;
  readonly weeksWithin: Float64Array;
  readonly weeksMean: Float64Array;
  readonly fitted: Float64Array;
  readonly residuals: Float64Array;
  /** What the change would be were only the interval's length within the horse different: the outcome less all else. */
  readonly adjusted: Float64Array;
  /** The change at a horse's usual interval, all else as it is on average. */
  readonly usual: number;
  readonly checks: IntervalChecks;
}

export interface IntervalChecks {
  /** Whole intervals shuffled within each horse. */
  readonly permutation: { readonly p: number; readonly arrangements: number; readonly exact: boolean };
  readonly robust: { readonly slope: number; readonly lower: number; readonly upper: number };
  /** The within-horse effect without each horse. */
  readonly without: readonly { readonly horse: string; readonly estimate: number; readonly se: number }[];
  /** The within-horse effect from smaller models, in words. */
  readonly other: readonly (Pick<IntervalEstimate, 'estimate' | 'lower' | 'upper'> & { readonly model: string })[];
  /** Do horses differ in their slopes? The likelihood ratio's p, halved as a variance can't be below zero. */
  readonly ownSlopesP: number;
  /** Residuals in order against where normal ones would be. */
  readonly residuals: { readonly sorted: Float64Array; readonly expected: Float64Array; readonly straightness: number };
  /** Were feet seen sooner because they were bad? Days of the interval that follows for one unit more at its start. */
  readonly soonerWhenBad: { readonly days: number; readonly p: number };
}

/** Called on the way; `false` stops. */
export type Progress = (done: number, total: number) => boolean;

const within = 'interval_within';

/**
 * Does a longer interval go with more change? A mixed model in which the length of an interval stands twice: as weeks beyond
 * the horse's own mean, and as that mean. What stands between horses (who is seen how often, and why) then can't pass for
 * what happens within one.
 * @param data  from `intervalData`
 * @returns the effect of a week, with checks; or in words why there is too little to say anything
 * @throws DOMException `AbortError` where `progress` returns false
 * @source Van de Pol & Wright 2009, Animal Behaviour 77:753–758, for the separation; Freedman & Lane 1983, Journal of
 *   Business & Economic Statistics 1:292–298, for shuffling what the other effects leave
 */
export function intervalModel(
  data: IntervalData,
  { ownSlopes = false, seed = 1, draws = 9999 }: IntervalOptions = {},
  progress: Progress = () => true,
): IntervalAnswer {
  const planned = intervalDesign(data, ownSlopes);
  if (typeof planned === 'string') return { kind: 'too little', reason: planned };
  const { columns, rows } = planned;
  const horses = new Set(columns.horse as readonly string[]).size;
  const total = horses + 6;
  let done = 0;
  const step = () => {
    if (!progress(++done, total)) throw new DOMException('The work was stopped', 'AbortError');
  };
  const spec = specOf(planned);
  const model = mixedModel(columns, spec);
  step();
  const { fitted, residuals, population } = fittedValues(model.fit);
  const weeksWithin = columns[within] as Float64Array;
  const weeksMean = columns.interval_mean as Float64Array;
  const effect = termOf(model, within)!;
  const usual = population.reduce((sum, value, i) => sum + value - effect.estimate * weeksWithin[i], 0) / model.n;
  const adjusted = population.map(
    (value, i) => usual + effect.estimate * weeksWithin[i] + (model.fit.design.y[i] - value),
  );
  const errors = Float64Array.from(rows, (row) => data.changeError[row]);

  const permutation = shuffled(planned, adjusted, { seed, draws });
  step();
  const robust = theilSenWithin(weeksWithin, columns.change as Float64Array, codes(planned.foot), {
    clusters: codes(columns.horse as readonly string[]),
    seed,
  });
  step();
  const others = otherModels(planned, spec);
  step();
  const ownSlopesP = slopesDiffer(planned);
  step();
  const without = leaveOneOut(columns, spec, 'horse', () => {
    step();
    return true;
  });
  return {
    kind: 'fitted',
    ...effectsOf(model, planned, errorsBeyond * median(errors)),
    rSquared: rSquared(model),
    ...{ rows, weeksWithin, weeksMean, fitted, residuals, adjusted, usual },
    checks: {
      permutation,
      robust: { slope: robust.slope, lower: robust.lower, upper: robust.upper },
      without: without.flatMap(({ group, fixed }) =>
        fixed.filter(({ term }) => term === within).map(({ estimate, se }) => ({ horse: group, estimate, se })),
      ),
      other: others,
      ownSlopesP,
      residuals: normalQuantiles(residuals),
      soonerWhenBad: soonerWhenBad(data, planned, { seed, draws }),
    },
  };
}

/** What a model of the intervals says, whatever it was fitted to. */
export function effectsOf(
  model: FittedModel,
  { fixed, random, notKnown, farrierAs, missing }: IntervalEffects['design'] & Pick<IntervalEffects, 'missing'>,
  smallestChange: number,
): IntervalEffects {
  const between = termOf(model, 'interval_mean');
  return {
    terms: model.fixed.map(({ term, ...rest }) => ({ term, ...estimateOf(rest) })),
    within: estimateOf(termOf(model, within)!),
    between: between && estimateOf(between),
    random: model.random.map(({ by, term, sd }) => ({ by, term, sd })),
    residualSd: model.residualSd,
    singular: model.singular,
    dropped: model.dropped,
    design: { fixed, random, notKnown, farrierAs },
    ...{ n: model.n, missing, smallestChange },
  };
}

/** Only the effects of a model of the intervals, without its checks: for asking several outcomes at once. */
export function intervalEffect(
  data: IntervalData,
  options: Pick<IntervalOptions, 'ownSlopes'> = {},
): IntervalEstimate | TooLittle {
  const planned = intervalDesign(data, options.ownSlopes ?? false);
  if (typeof planned === 'string') return { kind: 'too little', reason: planned };
  return estimateOf(termOf(mixedModel(planned.columns, specOf(planned)), within)!);
}

function specOf({ fixed, random }: Pick<IntervalDesign, 'fixed' | 'random'>): MixedModelSpec {
  return { response: 'change', fixed: [...fixed], random };
}

function termOf(model: FittedModel, term: string) {
  return model.fixed.find((each) => each.term === term);
}

function estimateOf({ estimate, se, df, t, p, lower, upper }: IntervalEstimate): IntervalEstimate {
  return { estimate, se, df, t, p, lower, upper };
}

function codes(words: readonly string[]): Float64Array {
  const known = new Map<string, number>();
  return Float64Array.from(words, (word) => {
    if (!known.has(word)) known.set(word, known.size);
    return known.get(word)!;
  });
}

/** One value an interval of a horse, its feet averaged: feet of one interval are shuffled together. */
function byInterval({ columns, interval }: IntervalDesign, values: Float64Array) {
  const groups = new Map<string, { horse: string; weeks: number; sum: number; count: number }>();
  const horse = columns.horse as readonly string[];
  for (const [i, name] of interval.entries()) {
    const key = `${horse[i]}\u0000${name}`;
    const group = groups.get(key) ?? { horse: horse[i], weeks: (columns[within] as Float64Array)[i], sum: 0, count: 0 };
    group.sum += values[i];
    group.count++;
    groups.set(key, group);
  }
  const list = [...groups.values()];
  return {
    horses: codes(list.map((each) => each.horse)),
    weeks: list.map(({ weeks }) => weeks),
    means: list.map(({ sum, count }) => sum / count),
  };
}

function shuffled(planned: IntervalDesign, adjusted: Float64Array, options: { seed: number; draws: number }) {
  const { horses, weeks, means } = byInterval(planned, adjusted);
  const { p, total, exact } = permuteWithin(weeks, means, horses, options);
  return { p, arrangements: total, exact };
}

function soonerWhenBad(data: IntervalData, planned: IntervalDesign, options: { seed: number; draws: number }) {
  const atStart = Float64Array.from(planned.rows, (row) => Math.abs(data.atStart[row]));
  const { horses, weeks, means } = byInterval(planned, atStart);
  const { slope, p } = permuteWithin(
    means,
    weeks.map((each) => 7 * each),
    horses,
    options,
  );
  return { days: slope, p };
}

function otherModels({ columns, fixed }: IntervalDesign, spec: MixedModelSpec): IntervalChecks['other'] {
  const circumstances = ['season', 'shod', 'farrier'].filter((name) => fixed.includes(name) || usesGroup(spec, name));
  const without = (names: readonly string[]) => ({
    ...spec,
    fixed: fixed.filter((name) => !names.includes(name)),
    random: spec.random.filter(({ by }) => !by.some((name) => names.includes(name))),
  });
  const lists = circumstances.length > 1 ? [...circumstances.map((name) => [name]), circumstances] : [circumstances];
  return lists
    .filter((names) => names.length > 0)
    .map((names) => {
      const { estimate, lower, upper } = termOf(mixedModel(columns, without(names)), within)!;
      return { model: `without ${listed(names)}`, estimate, lower, upper };
    });
}

function usesGroup({ random }: MixedModelSpec, name: string): boolean {
  return random.some(({ by }) => by.includes(name));
}

function slopesDiffer({ columns, fixed, random }: IntervalDesign): number {
  const criterion = (ownSlopes: boolean) => {
    const terms = random.map(({ by }) => (by.length === 1 && by[0] === 'horse' ? horseTerm(ownSlopes) : { by }));
    return mixedModel(columns, { response: 'change', fixed: [...fixed], random: terms, method: 'ML' }).criterion;
  };
  return chiSquared.upper(Math.max(0, criterion(false) - criterion(true)), 1) / 2;
}

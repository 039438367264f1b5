import { type DisplayUnits, formatQuantity } from '../sheet/display.ts';
import { counted } from '../words/counted.ts';
import { fixed } from '../words/fixed.ts';
import { say } from '../words/say.ts';
import { shownDay } from '../words/shownDay.ts';
import { citation } from './bibliography.ts';
import type { Finding } from './finding.ts';
import type { FootFacts } from './footFacts.ts';
import { endOf, limbName } from './limbs.ts';
import type { Measure, Range } from './measure.ts';
import type { Verdict } from './verdict.ts';

/**
 * A measure's value as a sentence without a capital and without a full stop.
 * @param error  one standard error; left out, none is written
 * @example measureSentence(frogRatio, 0.75, { length: 'mm', mass: 'kg' }) // 'the frog is 0.75 times as wide as it is long'
 */
export function measureSentence(measure: Measure, value: number, units: DisplayUnits, error?: number): string {
  const below = value < 0 ? measure.sentenceBelowZero : undefined;
  const shown = formatQuantity(below === undefined ? value : -value, measure.unit, units, { error });
  return (below ?? measure.sentence).replace('{value}', () => shown);
}

/** A range in words: `at most 5.0°`, `−5.0 mm to 5.0 mm`, `between −5.0 mm and 5.0 mm` where the limits lie outside. */
export function rangeSentence(range: Range, unit: string, units: DisplayUnits): string {
  const { atLeast, atMost, limitsOutside = false } = range;
  const at = (limit: number): string => formatQuantity(limit, unit, units);
  if (atLeast !== undefined && atMost !== undefined) {
    if (atLeast === atMost)
      return atLeast === 0 && /deg/.test(unit) ? say`parallel, a difference of ${at(0)}` : at(atLeast);
    return limitsOutside ? say`between ${at(atLeast)} and ${at(atMost)}` : say`${at(atLeast)} to ${at(atMost)}`;
  }
  if (atLeast !== undefined) return `${limitsOutside ? say`more than` : say`at least`} ${at(atLeast)}`;
  return atMost === undefined ? say`any` : `${limitsOutside ? say`less than` : say`at most`} ${at(atMost)}`;
}

/** Where a range comes from and how firm that is: `Turner, … ` or `common practice, no source`. */
export function rangeSource({ source, firmness }: Range): string {
  const words = citation(source);
  return firmness === 'published' || source === firmness || words.includes(citation('from memory'))
    ? words
    : `${words} (${citation(firmness)})`;
}

/** What a verdict says, as a sentence without a full stop. */
export function verdictSentence(verdict: Verdict, unit: string, units: DisplayUnits): string {
  const { state, by = 0, word, repeats } = verdict;
  const named = word === undefined ? '' : ` (${word})`;
  const distance = formatQuantity(by, unit, units);
  if (state === 'within') return say`within the range`;
  if (state === 'beyond') return say`beyond the range by ${distance}${named}, more than the error of measuring`;
  if (state === 'missing') return say`not measured`;
  if (state === 'no range') return say`no range holds for this foot`;
  const tell = wouldTell(repeats);
  return say`${distance} outside the range${named}, but can’t tell from these measurements${tell}`;
}

function wouldTell(repeats: number | undefined): string {
  return repeats === undefined ? '' : say`; ${countOfReadings(repeats)} would tell`;
}

function countOfReadings(repeats: number): string {
  return repeats > 30 ? say`more readings than anyone would take` : say`${repeats} readings in all`;
}

/** `Thistle, right fore`. */
export function footName({ horse, limb }: Pick<FootFacts, 'horse' | 'limb'>): string {
  return `${horse}, ${limbName(limb)}`;
}

/** A finding in words, for any page: nothing in it tells anyone how to cut a foot. */
export interface FindingWords {
  readonly subject: string;
  readonly sentence: string;
  /** The number with its error. */
  readonly value: string;
  /** Against what it was held: range and source, the other foot, its own past, the herd. */
  readonly against: readonly string[];
  readonly notes: readonly string[];
}

/** The words of a finding, in the units that the reader chose. */
export function findingWords(finding: Finding, units: DisplayUnits): FindingWords {
  const { measure, foot, value, error, also } = finding;
  const signed = measure.sentenceBelowZero !== undefined;
  return {
    subject:
      measure.view === 'pair'
        ? say`${foot.horse}, ${endOf(foot.limb) === 'front' ? say`front` : say`hind`} pair`
        : footName(foot),
    sentence: sentenceOf(finding, units),
    value: formatQuantity(value, measure.unit, units, { error, signed }),
    against: againstLines(finding, units),
    notes: [
      ...notesOf(finding),
      ...also.map(
        (other) => say`Also, less unusual: ${measureSentence(other.measure, other.value, units, other.error)}.`,
      ),
    ],
  };
}

function sentenceOf({ measure, value, own, state, repeats, foot, verdict }: Finding, units: DisplayUnits): string {
  const parts = [capital(measureSentence(measure, value, units))];
  if (verdict.state === 'beyond' && verdict.word !== undefined) parts[0] += ` (${verdict.word})`;
  if (own === undefined) parts.push(say`measured once at this moment, so whether it changed can’t be told yet`);
  else {
    const change = formatQuantity(Math.abs(own.change), measure.unit, units, { error: own.changeError });
    parts.push(say`a change of ${change} from what is usual for this foot`);
    if (state === 'unsure') {
      const tell = wouldTell(repeats);
      parts.push(say`and whether that is more than the error of measuring can’t be told${tell}`);
    }
  }
  const told = `${parts.join(', ')}.`;
  return measure.context === 'crooked' && (foot.age ?? 0) >= grown ? `${told} ${crooked}` : told;
}

/** Years from which a horse's limbs are as they are. Common practice, no source. */
const grown = 5;
const crooked = say`In a horse of ${grown} years or more crookedness will not be trimmed straight (common practice, no source).`;

function notesOf({ foot, measure, state }: Finding): string[] {
  const notes: string[] = [];
  if (state === 'on purpose') notes.push(say`Vet and farrier have set this foot so on purpose: it is not ranked.`);
  if (measure.context === 'long' && foot.build === 'gaited')
    notes.push(say`Gaited builds carry longer feet on purpose.`);
  if (foot.poorlySeen)
    notes.push(say`Measured with a poor view or with hair over the hairline: its error is taken as twice as large.`);
  return notes;
}

function againstLines(finding: Finding, units: DisplayUnits): string[] {
  const { measure, verdict, other, own, herd, foot } = finding;
  const show = (value: number): string => formatQuantity(value, measure.unit, units);
  const lines: string[] = [];
  if (verdict.range === undefined) lines.push(say`No range holds for this foot.`);
  else {
    const { range } = verdict;
    const words = rangeSentence(range, measure.unit, units);
    lines.push(say`Range: ${words} — ${verdictSentence(verdict, measure.unit, units)}. Source: ${rangeSource(range)}.`);
  }
  if (other !== undefined) lines.push(say`The other foot at the same time: ${show(other)}.`);
  if (own !== undefined) {
    const earlier = counted(own.earlier, {
      one: say`its one earlier measurement`,
      other: say`the middle of its ${own.earlier} earlier measurements`,
    });
    lines.push(say`This foot on ${shownDay(own.last.date)}: ${show(own.last.value)}; ${earlier}: ${show(own.median)}.`);
  }
  if (herd !== undefined) {
    const feet = say`${herd.feet} ${endOf(foot.limb) === 'front' ? say`front` : say`hind`} feet`;
    const when = herd.any ? say`at any moment` : (momentWords[foot.moment] ?? foot.moment);
    const far = fixed(Math.abs(herd.distance), 1);
    lines.push(
      say`The herd’s ${feet} ${when}: middle ${show(herd.median)}; this one lies ${far} times the usual spread away.`,
    );
  }
  return lines;
}

const momentWords: Readonly<Record<string, string>> = Object.assign(Object.create(null), {
  before: say`before the farrier’s work`,
  after: say`after the farrier’s work`,
  between: say`between visits`,
});

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

import type { Data, RandomSpec } from '../stats/index.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import { shownDay } from '../words/shownDay.ts';
import type { IntervalData } from './intervalData.ts';

/** The rows and terms of a model of the intervals. */
export interface IntervalDesign {
  /** `change`, `interval_within`, `interval_mean` (weeks), `horse`, `limb`, `interval` and the circumstances. */
  readonly columns: Readonly<Record<string, Data>>;
  readonly fixed: readonly string[];
  readonly random: readonly RandomSpec[];
  /** Which entries of the data the rows are. */
  readonly rows: Int32Array;
  /** Which foot and which interval of its horse a row belongs to. */
  readonly foot: readonly string[];
  readonly interval: readonly string[];
  /** Rows left out because a circumstance in the model is unknown for them. */
  readonly missing: number;
  /** Circumstances that are not in the model because too few rows know them. */
  readonly notKnown: readonly string[];
  readonly farrierAs: 'fixed' | 'random' | 'not in the model';
}

/** Least numbers below which nothing is fitted: common practice, no source. */
const least = { horses: 3, intervals: 20, spareRows: 10 } as const;
/** A circumstance known for fewer of the rows than this is left out of the model rather than losing the rows. */
export const knownEnough = 0.8;
/** With so many farriers their differences are drawn from one spread; with fewer each has a term of its own. */
const manyFarriers = 5;

/**
 * How the intervals enter a mixed model: the length of an interval as weeks beyond the mean of its horse and as that mean, the
 * limb and the known circumstances as fixed effects; horses, their feet, and the intervals of a horse (which its feet share)
 * as groups that vary.
 * @returns the design, or a sentence without a full stop that says why there is too little for one
 */
export function intervalDesign(data: IntervalData, ownSlopes: boolean): IntervalDesign | string {
  const all = data.horse.length;
  const circumstances = (['season', 'shod', 'farrier'] as const).filter((name) => new Set(named(data[name])).size > 1);
  const known = circumstances.filter((name) => named(data[name]).length >= knownEnough * all);
  const kept = Array.from({ length: all }, (_, row) => row).filter((row) =>
    known.every((name) => data[name][row] !== ''),
  );
  const rows = Int32Array.from(kept);
  const n = rows.length;
  const pick = (words: readonly string[]) => kept.map((row) => words[row]);
  const horse = pick(data.horse);
  const limb = pick(data.limb);
  const horses = new Set(horse).size;
  const few = tooFew(n, horses);
  if (few) return few;

  const weeks = Float64Array.from(rows, (row) => (data.end[row] - data.start[row]) / 7);
  const mean = meansBy(horse, weeks);
  const within = weeks.map((value, i) => value - mean[i]);
  if (within.every((value) => Math.abs(value) < 1e-9)) return neverLonger();

  const interval = kept.map((row) => say`${shownDay(data.start[row])} to ${shownDay(data.end[row])}`);
  const foot = horse.map((name, i) => `${name} ${limb[i]}`);
  const visit = horse.map((name, i) => `${name} ${interval[i]}`);
  const farriers = new Set(named(pick(data.farrier))).size;
  const farrierAs =
    !known.includes('farrier') || farriers < 2 ? 'not in the model' : farriers < manyFarriers ? 'fixed' : 'random';
  const varied = known.filter((name) => new Set(pick(data[name])).size > 1);
  const fixed = [
    'interval_within',
    ...(new Set(mean).size > 1 ? ['interval_mean'] : []),
    ...(new Set(limb).size > 1 ? ['limb'] : []),
    ...varied.filter((name) => name !== 'farrier' || farrierAs === 'fixed'),
  ];
  const terms = 1 + fixed.reduce((sum, name) => sum + levelsOf(name, { limb, ...circumstancesOf(data, pick) }), 0);
  const many = tooManyTerms(n, terms);
  if (many) return many;
  const random: RandomSpec[] = [
    ...(shares(visit, n) ? [{ by: ['horse', 'interval'] }] : []),
    ...(shares(foot, n) && new Set(foot).size > horses ? [{ by: ['horse', 'limb'] }] : []),
    horseTerm(ownSlopes),
    ...(farrierAs === 'random' ? [{ by: ['farrier'] }] : []),
  ];
  return {
    columns: {
      change: Float64Array.from(rows, (row) => data.change[row]),
      interval_within: within,
      interval_mean: mean,
      ...{ horse, limb, interval },
      ...circumstancesOf(data, pick),
    },
    ...{ fixed, random, rows, foot, interval, farrierAs },
    missing: all - n,
    notKnown: circumstances.filter((name) => !known.includes(name)),
  };
}

const intervalsInWords = (n: number) => counted(n, { one: say`${n} interval`, other: say`${n} intervals` });
const horsesInWords = (n: number) => counted(n, { one: say`${n} horse`, other: say`${n} horses` });

/** Why there are too few rows, or too few horses; nothing where there are enough. */
export function tooFew(n: number, horses: number): string | undefined {
  if (n >= least.intervals && horses >= least.horses) return undefined;
  return say`There are ${intervalsInWords(n)} of ${horsesInWords(horses)} to go by; at least ${least.intervals} intervals of ${least.horses} horses are needed`;
}

export function neverLonger(): string {
  return say`Every horse was always seen after the same number of days, so nothing can be said of longer intervals`;
}

/** Why there are too few rows for so many fixed effects; nothing where there are enough. */
export function tooManyTerms(n: number, terms: number): string | undefined {
  if (n >= terms + least.spareRows) return undefined;
  return say`There are ${intervalsInWords(n)} for ${terms} numbers that the model has to find; at least ${terms + least.spareRows} are needed`;
}

/** The horses' own shares; with a slope of its own for each, uncorrelated. */
export function horseTerm(ownSlopes: boolean): RandomSpec {
  return ownSlopes ? { by: ['horse'], slopes: ['interval_within'], correlated: false } : { by: ['horse'] };
}

function circumstancesOf(data: IntervalData, pick: (words: readonly string[]) => string[]) {
  return { season: pick(data.season), shod: pick(data.shod), farrier: pick(data.farrier) };
}

function named(words: readonly string[]): string[] {
  return words.filter((word) => word !== '');
}

/** Whether groups hold more than one row: else their share can't be told from what is left over. */
function shares(groups: readonly string[], n: number): boolean {
  return new Set(groups).size < n;
}

function levelsOf(name: string, words: Readonly<Record<string, readonly string[]>>): number {
  return Object.hasOwn(words, name) ? new Set(words[name]).size - 1 : 1;
}

function meansBy(groups: readonly string[], values: Float64Array): Float64Array {
  const sums = new Map<string, { sum: number; count: number }>();
  for (const [i, group] of groups.entries()) {
    const known = sums.get(group) ?? { sum: 0, count: 0 };
    sums.set(group, { sum: known.sum + values[i], count: known.count + 1 });
  }
  return Float64Array.from(groups, (group) => sums.get(group)!.sum / sums.get(group)!.count);
}

import { median, sd } from '../stats/index.ts';
import { withinSd } from './errors.ts';
import type { IntervalData } from './intervalData.ts';

export interface IntervalSpread {
  readonly horses: number;
  readonly feet: number;
  /** Gaps between two visits of a horse, and rows: one a foot. */
  readonly intervals: number;
  readonly rows: number;
  /** Days; NaN where there is no interval. */
  readonly shortest: number;
  readonly middle: number;
  readonly longest: number;
  /** How far intervals of one horse lie from its own mean, and horses' means from each other, as standard deviations in days. */
  readonly withinHorses: number;
  readonly betweenHorses: number;
}

/** How many intervals there are, and how their lengths vary within horses and between them. */
export function intervalSpread({ horse, limb, start, end }: IntervalData): IntervalSpread {
  const lengths = new Map<string, Map<string, number>>();
  for (const [row, name] of horse.entries()) {
    const own = lengths.get(name) ?? new Map<string, number>();
    own.set(`${start[row]} ${end[row]}`, end[row] - start[row]);
    lengths.set(name, own);
  }
  const ofHorses = Array.from(lengths.values(), (own) => [...own.values()]);
  const all = ofHorses.flat();
  const means = ofHorses.map((own) => own.reduce((sum, days) => sum + days, 0) / own.length);
  const squares = ofHorses.reduce(
    (sum, own, h) => sum + own.reduce((part, days) => part + (days - means[h]) ** 2, 0),
    0,
  );
  return {
    horses: ofHorses.length,
    feet: new Set(horse.map((name, row) => `${name}\u0000${limb[row]}`)).size,
    intervals: all.length,
    rows: horse.length,
    shortest: all.reduce(
      (least, days) => Math.min(least, days),
      all.length === 0 ? Number.NaN : Number.POSITIVE_INFINITY,
    ),
    middle: median(all),
    longest: all.reduce((most, days) => Math.max(most, days), all.length === 0 ? Number.NaN : Number.NEGATIVE_INFINITY),
    // Where no horse has two, nothing over nothing.
    withinHorses: Math.sqrt(squares / (all.length - ofHorses.length)),
    betweenHorses: sd(means),
  };
}

/** How single changes of one foot scatter about that foot's mean change, as a standard deviation in the outcome's unit. */
export function usualChangeSpread({ horse, limb, change }: IntervalData): number {
  const codes = new Map<string, number>();
  const foot = Int32Array.from(horse, (name, row) => {
    const key = `${name}\u0000${limb[row]}`;
    if (!codes.has(key)) codes.set(key, codes.size);
    return codes.get(key)!;
  });
  return withinSd(change, { codes: foot, count: codes.size }).sd;
}

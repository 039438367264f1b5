import type { Groups } from '../sheet/table.ts';
import { mad, median } from '../stats/index.ts';
import type { Finding } from './finding.ts';

/** With fewer feet to compare with, the herd says nothing. */
const enoughFeet = 8;

/** What is usual in a group of feet: where their values lie, how they spread, and how one foot's spread about its own. */
export interface Usual {
  readonly median: number;
  readonly spread: number;
  readonly feet: number;
  readonly ownSpread: number;
}

/** The rows that a herd's usual is taken from. */
export interface Readings {
  /** Rows of one foot at one moment, foot by foot. */
  readonly rowsOfEach: readonly (readonly number[])[];
  /** Which foot a row is of. */
  readonly feet: Groups;
  /** Therapeutic feet say nothing about what is usual. */
  readonly leaveOut: (row: number) => boolean;
}

/**
 * What is usual in each group of a herd.
 * @param values  one a row; a missing one is left out
 * @param herds  for each row its group, the same for all rows of one foot and moment
 * @returns one entry a group; medians and spreads (MAD times 1.4826) are `NaN` of none
 */
export function usualOf(values: Float64Array, herds: Groups, { rowsOfEach, feet, leaveOut }: Readings): Usual[] {
  const all: number[][] = Array.from({ length: herds.count }, () => []);
  const own: number[][] = Array.from({ length: herds.count }, () => []);
  const known: Set<number>[] = Array.from({ length: herds.count }, () => new Set());
  for (const each of rowsOfEach) {
    const measured: number[] = [];
    for (const row of each) if (!Number.isNaN(values[row]) && !leaveOut(row)) measured.push(values[row]);
    if (measured.length === 0) continue;
    const group = herds.codes[each[0]];
    known[group].add(feet.codes[each[0]]);
    for (const value of measured) all[group].push(value);
    if (measured.length < 3) continue;
    const middle = median(measured);
    for (const value of measured) own[group].push(Math.abs(value - middle));
  }
  return all.map((group, i) => ({
    median: median(group),
    spread: mad(group),
    feet: known[i].size,
    ownSpread: 1.4826 * median(own[i]),
  }));
}

/** A value held against the usual; `undefined` where too few feet or no spread say what is usual. */
export function against(value: number, { median, spread, feet }: Usual, any: boolean): Finding['herd'] {
  return feet < enoughFeet || !(spread > 0) ? undefined : { median, feet, distance: (value - median) / spread, any };
}

import { type Numbers, present } from './numbers.ts';
import { selectNth } from './selectNth.ts';

/** The nine definitions of Hyndman & Fan, by their numbers. 7 is the default here as in R. */
export type QuantileType = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9;

// Products such as 0.1 * 30 miss a whole number by a rounding error: this much is forgiven, as in R.
const fuzz = 4 * Number.EPSILON;

/**
 * A quantile of a sample.
 * @param values any numbers, in any order; a missing one is left out
 * @param q the share below, 0 to 1, or several of them
 * @param type which of the nine definitions, 7 where not given
 * @returns the quantile in the unit of `values`, NaN of none or where `q` is NaN; for several shares a list
 * @throws TypeError where a share lies outside 0 to 1
 * @source Hyndman & Fan 1996, The American Statistician 50:361–365
 * @example quantile([3, 1, 2, 10], 0.25) // 1.75
 */
export function quantile(values: Numbers, q: number, type?: QuantileType): number;
export function quantile(values: Numbers, q: readonly number[], type?: QuantileType): number[];
export function quantile(values: Numbers, q: number | readonly number[], type: QuantileType = 7) {
  const kept = present(values);
  if (typeof q !== 'number') {
    kept.sort();
    return q.map((share) => quantileSorted(kept, share, type));
  }
  const { below, weight } = place(kept.length, q, type);
  if (kept.length === 0 || Number.isNaN(q)) return NaN;
  const low = selectNth(kept, below);
  if (weight === 0) return low;
  let high = Infinity;
  for (let i = below + 1; i < kept.length; i++) if (kept[i] < high) high = kept[i];
  return between(low, high, weight);
}

/**
 * A quantile of numbers that are sorted already, none of them missing.
 * @param sorted numbers from small to large
 * @param q the share below, 0 to 1
 * @param type which of the nine definitions, 7 where not given
 * @returns the quantile in the unit of `sorted`, NaN of none or where `q` is NaN
 * @throws TypeError where the share lies outside 0 to 1
 * @example quantileSorted([1, 2, 3, 10], 0.25) // 1.75
 */
export function quantileSorted(sorted: Numbers, q: number, type: QuantileType = 7): number {
  const { below, weight } = place(sorted.length, q, type);
  if (sorted.length === 0 || Number.isNaN(q)) return NaN;
  return weight === 0 ? sorted[below] : between(sorted[below], sorted[below + 1], weight);
}

/** Between which two of `count` sorted numbers the quantile lies, and how far along. */
function place(count: number, q: number, type: QuantileType): { below: number; weight: number } {
  if (q < 0 || q > 1) throw new TypeError(`A share from 0 to 1 was expected, found ${q}; for percent divide by 100`);
  const position = firstRank(count, q, type);
  let rank = Math.floor(position + fuzz);
  let weight = position - rank;
  if (Math.abs(weight) < fuzz) weight = 0;
  if (type === 1) weight = weight > 0 ? 1 : 0;
  if (type === 2) weight = weight > 0 ? 1 : 0.5;
  if (type === 3) weight = weight > 0 || rank % 2 !== 0 ? 1 : 0;
  if (weight === 1) {
    rank++;
    weight = 0;
  }
  if (rank < 1) return { below: 0, weight: 0 };
  return rank >= count ? { below: count - 1, weight: 0 } : { below: rank - 1, weight };
}

/** What types 4 to 9 take for a and b in Hyndman & Fan's (n + 1 − a − b) q + a. */
const weights = [
  [0, 1],
  [0.5, 0.5],
  [0, 0],
  [1, 1],
  [1 / 3, 1 / 3],
  [3 / 8, 3 / 8],
] as const;

/** The quantile's place among ranks counted from 1, before the first three types round it. */
function firstRank(count: number, q: number, type: QuantileType): number {
  if (type <= 2) return count * q;
  if (type === 3) return count * q - 0.5;
  const [a, b] = weights[type - 4];
  return a + q * (count + 1 - a - b);
}

function between(low: number, high: number, weight: number): number {
  return low === high ? low : (1 - weight) * low + weight * high;
}

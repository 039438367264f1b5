import { type Numbers, presentRows } from './numbers.ts';

/**
 * A quantile where each value counts as often as its weight says: with whole weights, type 7 of the values written
 * out that often.
 * @param values numbers in any one unit; a row with anything missing is left out
 * @param weights 0 or more, as many
 * @param q the share below, 0 to 1
 * @returns the quantile in the unit of `values`, NaN where all weights add up to nothing
 * @throws TypeError where the share lies outside 0 to 1 or a weight is negative
 * @source Harrell & Dupont, the rule of `wtd.quantile` in the R package Hmisc
 * @example weightedQuantile([1, 5], [3, 1], 0.9) // 3.8
 */
export function weightedQuantile(values: Numbers, weights: Numbers, q: number): number {
  if (q < 0 || q > 1) throw new TypeError(`A share from 0 to 1 was expected, found ${q}; for percent divide by 100`);
  const [kept, often] = presentRows([values, weights]).columns;
  const rows = Array.from(kept.keys()).sort((a, b) => kept[a] - kept[b]);
  let total = 0;
  const upTo = rows.map((row) => {
    if (often[row] < 0) throw new TypeError(`Weights of 0 or more were expected, found ${often[row]}`);
    total += often[row];
    return total;
  });
  if (!(total > 0) || Number.isNaN(q)) return NaN;
  const place = 1 + (total - 1) * q;
  const at = (rank: number) => kept[rows[upTo.findIndex((sum) => sum >= Math.min(rank, total))]];
  const below = Math.max(1, Math.floor(place));
  const [low, high] = [at(below), at(below + 1)];
  return low === high ? low : low + (place - Math.floor(place)) * (high - low);
}

import type { Numbers } from './numbers.ts';
import { quantile } from './quantile.ts';

/**
 * The median: the middle number, or half-way between the two in the middle.
 * @param values any numbers, in any order; a missing one is left out
 * @returns the median in the unit of `values`, NaN of none
 * @example median([5, 1, 9, 2]) // 3.5
 */
export function median(values: Numbers): number {
  return quantile(values, 0.5);
}

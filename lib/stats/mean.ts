import { isMissing, type Numbers } from './numbers.ts';
import { sum } from './sum.ts';

/**
 * The arithmetic mean.
 * @param values any numbers; a missing one is left out
 * @returns the mean in the unit of `values`, NaN of none
 * @example mean([1, 2, NaN, 6]) // 3
 */
export function mean(values: Numbers): number {
  let count = 0;
  for (let i = 0; i < values.length; i++) if (!isMissing(values[i])) count++;
  return count === 0 ? NaN : sum(values) / count;
}

import { isMissing, type Numbers } from './numbers.ts';

/**
 * The sum, with the rounding errors added up beside it and paid back at the end, so that long columns of
 * large numbers keep their last digits.
 * @param values any numbers; a missing one is left out
 * @returns the sum, 0 of none
 * @source Neumaier 1974, ZAMM 54:39–51
 * @example sum([1e16, 1, -1e16]) // 1
 */
export function sum(values: Numbers): number {
  let total = 0;
  let lost = 0;
  for (let i = 0; i < values.length; i++) {
    const value = values[i];
    if (isMissing(value)) continue;
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  // An infinite total leaves NaN in what was lost.
  return Number.isNaN(lost) ? total : total + lost;
}

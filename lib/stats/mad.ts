import { median } from './median.ts';
import { type Numbers, present } from './numbers.ts';

/**
 * The median absolute deviation from the median, scaled so that it estimates the standard deviation of a
 * normal distribution.
 * @param values any numbers, in any order; a missing one is left out
 * @param scale 1.4826 where not given; 1 for the plain median of the distances
 * @returns the deviation in the unit of `values`, NaN of none
 * @source Hampel 1974, Journal of the American Statistical Association 69:383–393
 * @example mad([1, 2, 3, 4, 100]) // 1.4826
 */
export function mad(values: Numbers, scale = 1.4826): number {
  const middle = median(values);
  return scale * median(present(values).map((value) => Math.abs(value - middle)));
}

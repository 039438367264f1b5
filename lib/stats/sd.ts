import { mean } from './mean.ts';
import { isMissing, type Numbers } from './numbers.ts';

/**
 * The sample variance, with n − 1 below: twice over the data, and corrected by what rounding left in the mean.
 * @param values any numbers; a missing one is left out
 * @returns the variance in the squared unit of `values`, NaN of fewer than two
 * @source Chan, Golub & LeVeque 1983, The American Statistician 37:242–247, equation 1.7
 * @example variance([2, 4, 4, 4, 5, 5, 7, 9]) // 4.571428571428571
 */
export function variance(values: Numbers): number {
  const centre = mean(values);
  let count = 0;
  let drift = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    if (isMissing(values[i])) continue;
    const away = values[i] - centre;
    count++;
    drift += away;
    squares += away * away;
  }
  return count < 2 ? NaN : Math.max(0, squares - (drift * drift) / count) / (count - 1);
}

/**
 * The sample standard deviation, with n − 1 below.
 * @param values any numbers; a missing one is left out
 * @returns the standard deviation in the unit of `values`, NaN of fewer than two
 * @example sd([2, 4, 4, 4, 5, 5, 7, 9]) // 2.138089935299395
 */
export function sd(values: Numbers): number {
  return Math.sqrt(variance(values));
}

import { mean } from './mean.ts';
import { isMissing, type Numbers } from './numbers.ts';

/**
 * How much each value goes with the one before it.
 * @param values numbers in order, in any unit; pairs with either missing are left out
 * @param lag how many places apart, 1 where not given
 * @returns −1 to 1, NaN where the values don't vary
 * @source Box, Jenkins & Reinsel 2008, Time Series Analysis, 4th edition, 2.1.5
 * @example autocorrelation([1, 2, 3, 4]) // 0.25
 */
export function autocorrelation(values: Numbers, lag = 1): number {
  const centre = mean(values);
  let together = 0;
  let alone = 0;
  for (let i = 0; i < values.length; i++) {
    if (isMissing(values[i])) continue;
    alone += (values[i] - centre) ** 2;
    if (i >= lag && !isMissing(values[i - lag])) together += (values[i] - centre) * (values[i - lag] - centre);
  }
  return together / alone;
}

import { chiSquared } from '../distributions/chiSquared.ts';
import type { FittedModel } from './fittedModel.ts';

/**
 * Likelihood-ratio comparison of two nested models that were fitted by ML to the same rows.
 * @returns `chiSquared` twice the gain in log likelihood, `df` the parameters it cost, `p` from the chi-squared
 *   distribution; too large a p where the null puts a variance at zero (Self & Liang 1987)
 * @throws TypeError for REML fits or other rows
 */
export function compareModels(small: FittedModel, large: FittedModel): { chiSquared: number; df: number; p: number } {
  if (small.method !== 'ML' || large.method !== 'ML') {
    throw new TypeError('Models are compared by likelihood only when both are fitted with method ML');
  }
  if (small.n !== large.n) {
    throw new TypeError(`The models use ${small.n} and ${large.n} rows; fit both to the same rows before comparing`);
  }
  const df = large.parameters - small.parameters;
  const gain = Math.max(0, small.criterion - large.criterion);
  return { chiSquared: gain, df, p: chiSquared.upper(gain, df) };
}

import type { MixedModel } from './mixedModel.ts';
import { fittedValues } from './solution.ts';

/**
 * Share of the variance that a mixed model explains: `marginal` by the fixed effects alone, `conditional` with the groups.
 * @returns both from 0 to 1
 * @source Nakagawa & Schielzeth 2013, Methods Ecol Evol 4:133–142; random slopes as in Johnson 2014, 5:944–946
 */
export function rSquared(model: MixedModel): { marginal: number; conditional: number } {
  const { population } = fittedValues(model.fit);
  const { random, n } = model.fit.design;
  const mean = population.reduce((sum, value) => sum + value, 0) / n;
  const fixed = population.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1);
  let groups = 0;
  let at = 0;
  let pair = 0;
  for (const { coefficients } of random) {
    const sds = model.random.slice(at, at + coefficients.length).map(({ sd }) => sd);
    at += coefficients.length;
    for (const [a, one] of coefficients.entries()) {
      const x = (row: number, { values, scale }: typeof one) => (values ? values[row] * scale : 1);
      for (let row = 0; row < n; row++) groups += (sds[a] * x(row, one)) ** 2 / n;
      for (let b = 0; b < a; b++, pair++) {
        const covariance = model.correlations[pair].correlation * sds[a] * sds[b];
        for (let row = 0; row < n; row++) groups += (2 * covariance * x(row, one) * x(row, coefficients[b])) / n;
      }
    }
  }
  const total = fixed + groups + model.residualSd ** 2;
  return { marginal: fixed / total, conditional: (fixed + groups) / total };
}

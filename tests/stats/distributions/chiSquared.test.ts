import { expect, it } from 'vitest';
import { chiSquared } from '../../../lib/stats/distributions/chiSquared.ts';
import { normal } from '../../../lib/stats/distributions/normal.ts';
import { distributionLaws } from './laws.ts';

for (const df of [0.5, 1, 2, 30])
  distributionLaws(
    `chi-squared on ${df}`,
    {
      cdf: (x) => chiSquared.cdf(x, df),
      upper: (x) => chiSquared.upper(x, df),
      quantile: (p) => chiSquared.quantile(p, df),
    },
    [0.01, 0.5, 2, 4, 9],
  );

it('chi-squared on 2 degrees of freedom is exponential', () => {
  for (const x of [0.1, 3, 200]) expect(chiSquared.upper(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 13);
});
it('chi-squared on 1 is the square of a normal', () => {
  expect(chiSquared.upper(1.96 ** 2, 1)).toBeCloseTo(2 * normal.upper(1.96), 15);
});
it('nothing of chi-squared lies below 0', () => {
  expect(chiSquared.cdf(0, 3)).toBe(0);
  expect(chiSquared.upper(-1, 3)).toBe(1);
  expect(chiSquared.quantile(0.5, NaN)).toBeNaN();
});

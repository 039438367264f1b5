import { expect, it } from 'vitest';
import { chiSquared } from '../../../lib/stats/distributions/chiSquared.ts';
import { fDistribution } from '../../../lib/stats/distributions/fDistribution.ts';
import { studentT } from '../../../lib/stats/distributions/studentT.ts';
import { distributionLaws } from './laws.ts';

for (const [df1, df2] of [
  [1, 3],
  [4, 2.5],
  [19, 60],
  [3, Infinity],
])
  distributionLaws(
    `F on ${df1} and ${df2}`,
    {
      cdf: (x) => fDistribution.cdf(x, df1, df2),
      upper: (x) => fDistribution.upper(x, df1, df2),
      quantile: (p) => fDistribution.quantile(p, df1, df2),
    },
    [0.02, 0.4, 1, 2, 3.5],
  );

it('F turns over when its degrees of freedom change places', () => {
  for (const f of [0.01, 0.6, 5]) expect(fDistribution.cdf(f, 3, 8)).toBeCloseTo(fDistribution.upper(1 / f, 8, 3), 14);
});
it('F on 1 and n is the square of t on n', () => {
  expect(fDistribution.upper(2.5 ** 2, 1, 9)).toBeCloseTo(studentT.twoSided(2.5, 9), 15);
});
it('F with df2 without end is chi-squared over df1', () => {
  expect(fDistribution.upper(2, 5, Infinity)).toBeCloseTo(chiSquared.upper(10, 5), 15);
  expect(fDistribution.quantile(0.9, 5, Infinity)).toBeCloseTo(chiSquared.quantile(0.9, 5) / 5, 14);
});
it('F keeps its digits in a tail of 1e-24', () => {
  // Bland & Altman 1996, peak flow of twenty children: R gives this p for F on 19 and 60.
  expect(fDistribution.upper(32.608209621543146, 19, 60) / 1.149687570504003e-24).toBeCloseTo(1, 9);
});
it('F on no degrees of freedom is missing', () => {
  expect(fDistribution.quantile(0.5, 0, 4)).toBeNaN();
  expect(fDistribution.quantile(0.5, 4, NaN)).toBeNaN();
});

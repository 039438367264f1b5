import { expect, it } from 'vitest';
import { noncentralT } from '../../../lib/stats/distributions/noncentralT.ts';
import { normal } from '../../../lib/stats/distributions/normal.ts';
import { studentT } from '../../../lib/stats/distributions/studentT.ts';
import { distributionLaws } from './laws.ts';

for (const [df, ncp] of [
  [1, 0.5],
  [9, -2],
  [161, 2.8],
  [Infinity, 1],
])
  distributionLaws(
    `noncentral t on ${df} about ${ncp}`,
    { cdf: (t) => noncentralT.cdf(t, df, ncp), upper: (t) => noncentralT.upper(t, df, ncp) },
    [-5, -2, 0, 0.5, 2, 3],
  );

it('noncentral t without noncentrality is t, far out too', () => {
  for (const df of [0.8, 3, 50])
    for (const t of [-3, 0, 0.4, 12, 400])
      expect(noncentralT.upper(t, df, 0) / studentT.upper(t, df)).toBeCloseTo(1, 11);
});
it('noncentral t turns over with its noncentrality', () => {
  expect(noncentralT.cdf(1.2, 6, 2)).toBe(noncentralT.upper(-1.2, 6, -2));
});
it('noncentral t below zero is the normal below its noncentrality', () => {
  for (const df of [2, 40]) expect(noncentralT.cdf(0, df, 1.7)).toBeCloseTo(normal.cdf(-1.7), 14);
});
it('noncentral t is missing where a parameter is', () => {
  expect(noncentralT.upper(1, NaN, 1)).toBeNaN();
  expect(noncentralT.upper(1, 4, NaN)).toBeNaN();
});
it('noncentral t comes to the normal on many degrees of freedom, however large its noncentrality', () => {
  for (const df of [1500, 1e5, 1e8, 1e12])
    for (const [t, ncp] of [
      [1.96, 9],
      [1.96, 1],
      [-1.96, 2],
      [-3, -3.5],
      [12, 9],
    ]) {
      const expected = normal.upper(t - ncp);
      // The first correction is of the order of (t² + 1) t / df.
      expect(Math.abs(noncentralT.upper(t, df, ncp) / expected - 1)).toBeLessThan((200 * (t * t + 1)) / df + 1e-12);
    }
  expect(noncentralT.upper(-50, 1500, 3)).toBeLessThanOrEqual(1);
});
it('noncentral t on endless degrees of freedom is the normal about its noncentrality', () => {
  expect(noncentralT.upper(3, Infinity, 1)).toBe(normal.upper(2));
  expect(noncentralT.cdf(3, Infinity, 1)).toBe(normal.cdf(2));
});

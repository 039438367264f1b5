import { expect, it } from 'vitest';
import { normal } from '../../../lib/stats/distributions/normal.ts';
import { studentT } from '../../../lib/stats/distributions/studentT.ts';
import { distributionLaws } from './laws.ts';

for (const df of [0.7, 1, 4, 33.3, 1e6, Infinity])
  distributionLaws(
    `t on ${df}`,
    {
      cdf: (t) => studentT.cdf(t, df),
      upper: (t) => studentT.upper(t, df),
      quantile: (p) => studentT.quantile(p, df),
    },
    [-4, -1, -0.01, 0, 0.3, 2, 5],
  );

it('t on 1 degree of freedom is the Cauchy distribution', () => {
  for (const t of [-40, -1, 0.5, 3]) expect(studentT.cdf(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 14);
  expect(studentT.quantile(0.75, 1)).toBeCloseTo(1, 14);
});
it('t is symmetric and two-sided is twice one tail', () => {
  for (const t of [0, 0.2, 2.5, 30]) {
    expect(studentT.cdf(-t, 5)).toBe(studentT.upper(t, 5));
    expect(studentT.twoSided(t, 5)).toBe(studentT.twoSided(-t, 5));
    expect(studentT.twoSided(t, 5)).toBeCloseTo(2 * studentT.upper(t, 5), 15);
  }
  expect(studentT.quantile(0.1, 5)).toBeCloseTo(-studentT.quantile(0.9, 5), 14);
  expect(studentT.quantile(0.5, 5)).toBe(0);
});
it('t without end is the normal', () => {
  expect(studentT.cdf(1.3, Infinity)).toBeCloseTo(normal.cdf(1.3), 15);
  expect(studentT.cdf(1.3, 1e9)).toBeCloseTo(normal.cdf(1.3), 8);
  expect(studentT.quantile(0.9, Infinity)).toBe(normal.quantile(0.9));
});
it('t on no degrees of freedom is missing', () => {
  expect(studentT.quantile(0.9, 0)).toBeNaN();
  expect(studentT.quantile(0.9, NaN)).toBeNaN();
  expect(studentT.twoSided(1, NaN)).toBeNaN();
  for (const df of [0, -1, -3.3e15, -Infinity]) {
    expect(studentT.twoSided(2, df)).toBeNaN();
    expect(studentT.cdf(2, df)).toBeNaN();
  }
});

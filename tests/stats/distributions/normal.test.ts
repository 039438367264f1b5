import { expect, it } from 'vitest';
import { normal } from '../../../lib/stats/distributions/normal.ts';
import { distributionLaws } from './laws.ts';

distributionLaws('normal', normal, [-8, -3, -0.5, 0, 0.2, 2, 6]);

it('the normal density is the slope of its share', () => {
  for (const z of [-2, 0, 0.7, 3])
    expect((normal.cdf(z + 1e-5) - normal.cdf(z - 1e-5)) / 2e-5).toBeCloseTo(normal.density(z), 9);
});
it('the normal keeps its digits 30 standard deviations out', () => {
  // Abramowitz & Stegun, table 26.2: −log10 Q(30) = 197.30921
  expect(-Math.log10(normal.upper(30))).toBeCloseTo(197.30921, 5);
  expect(normal.cdf(-30)).toBe(normal.upper(30));
});

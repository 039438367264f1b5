import { expect, it } from 'vitest';
import { fDistribution } from '../../../lib/stats/distributions/fDistribution.ts';
import { noncentralF } from '../../../lib/stats/distributions/noncentralF.ts';
import { noncentralT } from '../../../lib/stats/distributions/noncentralT.ts';
import { distributionLaws } from './laws.ts';

distributionLaws(
  'noncentral F',
  { cdf: (f) => noncentralF.cdf(f, 3, 12, 5), upper: (f) => noncentralF.upper(f, 3, 12, 5) },
  [0.1, 1, 3, 9],
);

it('noncentral F without noncentrality is F', () => {
  for (const f of [0.1, 1, 7]) expect(noncentralF.cdf(f, 3, 12, 0)).toBeCloseTo(fDistribution.cdf(f, 3, 12), 15);
});
it('noncentral F on 1 degree of freedom is the square of noncentral t', () => {
  for (const ncp of [0.5, 3, 12]) {
    const both = noncentralT.upper(2.1, 17, ncp) + noncentralT.cdf(-2.1, 17, ncp);
    expect(noncentralF.upper(2.1 ** 2, 1, 17, ncp ** 2)).toBeCloseTo(both, 13);
  }
});
it('noncentral F knows no negative noncentrality', () => {
  expect(noncentralF.cdf(1, 2, 3, -1)).toBeNaN();
  expect(noncentralF.cdf(1, 2, 3, NaN)).toBeNaN();
});

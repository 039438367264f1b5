import chisquare from '@stdlib/stats-base-dists-chisquare';
import f from '@stdlib/stats-base-dists-f';
import normalOfStdlib from '@stdlib/stats-base-dists-normal';
import t from '@stdlib/stats-base-dists-t';
import { describe, it } from 'vitest';
import { chiSquared } from '../../lib/stats/distributions/chiSquared.ts';
import { fDistribution } from '../../lib/stats/distributions/fDistribution.ts';
import { noncentralF } from '../../lib/stats/distributions/noncentralF.ts';
import { noncentralT } from '../../lib/stats/distributions/noncentralT.ts';
import { normal } from '../../lib/stats/distributions/normal.ts';
import { studentT } from '../../lib/stats/distributions/studentT.ts';
import { closeTo, readCase } from './stats/read.ts';

const tails = readCase('distributions');
const noncentral = readCase('noncentral');

describe('against R', () => {
  it('tails of t, F, chi-squared and the normal', () => {
    for (const c of tails.t) closeTo(studentT.upper(c.t, c.df), c.upper, 1e-12);
    for (const c of tails.t) closeTo(studentT.twoSided(c.t, c.df), c.two_sided, 1e-12);
    for (const c of tails.F) closeTo(fDistribution.upper(c.F, c.df1, c.df2), c.upper, 1e-12);
    for (const c of tails.chisq) closeTo(chiSquared.upper(c.x, c.df), c.upper, 1e-12);
    for (const c of tails.norm) closeTo(normal.cdf(c.z), c.lower, 1e-12);
  });
  it('their inverses', () => {
    for (const c of tails.qt) closeTo(studentT.quantile(c.p, c.df), c.q, 1e-12);
    for (const c of tails.qf) closeTo(fDistribution.quantile(c.p, c.df1, c.df2), c.q, 1e-12);
    for (const c of tails.qchisq) closeTo(chiSquared.quantile(c.p, c.df), c.q, 1e-12);
    for (const c of tails.qnorm) closeTo(normal.quantile(c.p), c.q, 1e-12);
  });
  it('noncentral t and F', () => {
    for (const c of noncentral.t) closeTo(noncentralT.cdf(c.t, c.df, c.ncp), c.p, 1e-8);
    for (const c of noncentral.F) closeTo(noncentralF.cdf(c.F, c.df1, c.df2, c.ncp), c.p, 1e-8);
  });
});

// mpmath 1.3 at 30 digits: quadrature of the same integral, the sum of 80 Poisson terms, the incomplete beta function.
describe('against 30-digit arithmetic', () => {
  it('noncentral t, with a large noncentrality, few degrees of freedom and far out', () => {
    closeTo(noncentralT.upper(20, 2, 20), 0.6312065863690467, 1e-13);
    closeTo(noncentralT.upper(50, 30, 38), 0.0334350811279288, 1e-13);
    closeTo(noncentralT.upper(1e10, 1, 0), 3.18309886183791e-11, 1e-13);
    closeTo(noncentralT.cdf(-3, 4, 5), 1.53940926386575e-10, 1e-13);
  });
  it('noncentral F', () => {
    closeTo(noncentralF.cdf(3, 2, 20, 4), 0.5660313760169876, 1e-13);
    closeTo(noncentralF.cdf(4.2, 1, 17, 7.5), 0.248384191946601, 1e-13);
  });
  it('t with very many degrees of freedom', () => {
    closeTo(studentT.upper(1.96, 1e5), 0.02499928159715082, 1e-14);
  });
});

describe('against stdlib', () => {
  const degrees = [0.5, 1, 2.5, 7, 17, 60, 400];
  const places = [1e-3, 0.2, 0.9, 1, 1.7, 4, 25];
  const shares = [1e-9, 0.01, 0.3, 0.5, 0.8, 0.999];
  it('t', () => {
    for (const df of degrees) {
      for (const x of places) closeTo(studentT.cdf(-x, df), t.cdf(-x, df), 1e-11);
      for (const p of shares) closeTo(studentT.quantile(p, df), t.quantile(p, df), 1e-9, 1e-12);
    }
  });
  it('F', () => {
    for (const df1 of degrees)
      for (const df2 of degrees) {
        for (const x of places) closeTo(fDistribution.cdf(x, df1, df2), f.cdf(x, df1, df2), 1e-10, 1e-300);
        for (const p of shares.slice(1))
          closeTo(fDistribution.quantile(p, df1, df2), f.quantile(p, df1, df2), 1e-9, 1e-300);
      }
  });
  it('chi-squared', () => {
    for (const df of degrees) {
      for (const x of places) closeTo(chiSquared.cdf(x, df), chisquare.cdf(x, df), 1e-11, 1e-300);
      for (const p of shares) closeTo(chiSquared.quantile(p, df), chisquare.quantile(p, df), 1e-9, 1e-300);
    }
  });
  it('normal', () => {
    for (const x of places) closeTo(normal.cdf(-x), normalOfStdlib.cdf(-x, 0, 1), 1e-12);
    // Its quantile is right to 8 digits at 1e-9; that share is compared with R above.
    for (const p of shares.slice(1)) closeTo(normal.quantile(p), normalOfStdlib.quantile(p, 0, 1), 1e-12, 1e-15);
  });
});

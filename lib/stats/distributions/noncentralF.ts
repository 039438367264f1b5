import { incompleteBeta } from './incompleteBeta.ts';
import { gammaKernel } from './kernels.ts';
import { positiveTails, type Tails } from './tails.ts';

/** A mixture of beta distributions with Poisson weights, summed from the heaviest weight outwards. */
function tails(f: number, df1: number, df2: number, ncp: number): Tails {
  if (!(ncp >= 0)) return { lower: NaN, upper: NaN };
  return positiveTails(f, (inside) => {
    const ratio = (df1 * inside) / df2;
    const x = 1 / (1 + 1 / ratio);
    const y = 1 / (1 + ratio);
    const heaviest = Math.floor(ncp / 2);
    let lower = 0;
    let upper = 0;
    const walk = (from: number, step: 1 | -1) => {
      for (let j = from; j >= 0; j += step) {
        const weight = j === 0 ? Math.exp(-ncp / 2) : gammaKernel(j, ncp / 2) / j;
        const part = incompleteBeta(x, y, df1 / 2 + j, df2 / 2);
        lower += weight * part.lower;
        upper += weight * part.upper;
        if (weight * part.lower <= 1e-17 * lower && weight * part.upper <= 1e-17 * upper) return;
      }
    };
    walk(heaviest, -1);
    walk(heaviest + 1, 1);
    return { lower, upper };
  });
}

/**
 * The noncentral F distribution with `df1` and `df2` degrees of freedom and noncentrality `ncp`, 0 or more:
 * `cdf`, the share below f, and `upper`, the share above. NaN in, NaN out.
 * @source Johnson, Kotz & Balakrishnan 1995, Continuous Univariate Distributions 2, 30.10
 * @example noncentralF.cdf(3, 2, 20, 4) // 0.5660313760169876
 */
export const noncentralF = {
  cdf: (f: number, df1: number, df2: number, ncp: number): number => tails(f, df1, df2, ncp).lower,
  upper: (f: number, df1: number, df2: number, ncp: number): number => tails(f, df1, df2, ncp).upper,
};

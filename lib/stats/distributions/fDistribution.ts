import { chiSquared } from './chiSquared.ts';
import { incompleteBeta } from './incompleteBeta.ts';
import { incompleteGamma } from './incompleteGamma.ts';
import { invert } from './invert.ts';
import { betaKernel } from './kernels.ts';
import { positiveTails, type Tails } from './tails.ts';

function tails(f: number, df1: number, df2: number): Tails {
  return positiveTails(f, (inside) => {
    const ratio = (df1 * inside) / df2;
    return df2 === Infinity
      ? incompleteGamma(df1 / 2, (df1 * inside) / 2)
      : incompleteBeta(1 / (1 + 1 / ratio), 1 / (1 + ratio), df1 / 2, df2 / 2);
  });
}

/**
 * The logarithm of the F that has given shares below and above it, both above 0.
 * Both are asked for, since one minus a small share has lost its digits.
 */
export function logFWithTails(target: Tails, df1: number, df2: number): number {
  const at = (log: number) => {
    const ratio = (df1 * Math.exp(log)) / df2;
    return {
      ...tails(Math.exp(log), df1, df2),
      density: betaKernel(1 / (1 + 1 / ratio), 1 / (1 + ratio), df1 / 2, df2 / 2),
    };
  };
  return invert(at, target, 0);
}

/**
 * The F distribution with `df1` and `df2` degrees of freedom, any numbers above 0, `df2` may be ∞: `cdf`, the share
 * below f; `upper`, the share above, exact in the far tail; `quantile`, the F with the share p below, 0 at 0 and ∞
 * at 1, NaN outside 0 to 1. NaN in, NaN out.
 * @source DLMF 8.17, https://dlmf.nist.gov/8.17: through the incomplete beta function
 * @example fDistribution.upper(45.85, 1, 17) // 3.2651402228602516e-6
 * @example fDistribution.quantile(0.95, 1, 17) // 4.451321772468134
 */
export const fDistribution = {
  cdf: (f: number, df1: number, df2: number): number => tails(f, df1, df2).lower,
  upper: (f: number, df1: number, df2: number): number => tails(f, df1, df2).upper,
  quantile(p: number, df1: number, df2: number): number {
    if (!(p > 0 && p < 1 && df1 > 0 && df2 > 0)) return p === 0 ? 0 : p === 1 ? Infinity : NaN;
    if (df2 === Infinity) return chiSquared.quantile(p, df1) / df1;
    return Math.exp(logFWithTails({ lower: p, upper: 1 - p }, df1, df2));
  },
};

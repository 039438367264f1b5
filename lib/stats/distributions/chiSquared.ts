import { incompleteGamma } from './incompleteGamma.ts';
import { invert } from './invert.ts';
import { gammaKernel } from './kernels.ts';
import { positiveTails, type Tails } from './tails.ts';

function tails(x: number, df: number): Tails {
  return positiveTails(x, (inside) => incompleteGamma(df / 2, inside / 2));
}

/**
 * The chi-squared distribution with `df` degrees of freedom, any number above 0: `cdf`, the share below x; `upper`,
 * the share above, exact in the far tail; `quantile`, the x with the share p below, 0 at 0 and ∞ at 1, NaN outside
 * 0 to 1. NaN in, NaN out.
 * @source DLMF 8.2.4, https://dlmf.nist.gov/8.2
 * @example chiSquared.upper(3.84, 1) // 0.050043521248705224
 * @example chiSquared.quantile(0.95, 1) // 3.841458820694124
 */
export const chiSquared = {
  cdf: (x: number, df: number): number => tails(x, df).lower,
  upper: (x: number, df: number): number => tails(x, df).upper,
  quantile(p: number, df: number): number {
    if (!(p > 0 && p < 1 && df > 0)) return p === 0 ? 0 : p === 1 ? Infinity : NaN;
    // In ln x the density is the kernel, and no step leaves the positive numbers.
    const at = (log: number) => {
      const x = Math.exp(log);
      return { ...tails(x, df), density: gammaKernel(df / 2, x / 2) };
    };
    return Math.exp(invert(at, { lower: p, upper: 1 - p }, Math.log(df)));
  },
};

import { incompleteGamma } from './incompleteGamma.ts';
import { invert } from './invert.ts';
import type { Tails } from './tails.ts';

function tails(z: number): Tails {
  if (Number.isNaN(z)) return { lower: NaN, upper: NaN };
  const { lower, upper } = incompleteGamma(0.5, Math.min((z * z) / 2, 1e4));
  const far = upper / 2;
  const near = 0.5 + lower / 2;
  return z < 0 ? { lower: far, upper: near } : { lower: near, upper: far };
}

function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/**
 * The standard normal distribution: `density`; `cdf`, the share below z; `upper`, the share above, exact in the far
 * tail where 1 − cdf is not; `quantile`, the z with the share p below, −∞ at 0 and ∞ at 1, NaN outside 0 to 1.
 * NaN in, NaN out.
 * @source DLMF 7.11.2, https://dlmf.nist.gov/7.11: through the incomplete gamma function
 * @example normal.cdf(1.96) // 0.9750021048517795
 * @example normal.quantile(0.975) // 1.9599639845400536
 */
export const normal = {
  density,
  cdf: (z: number): number => tails(z).lower,
  upper: (z: number): number => tails(z).upper,
  quantile(p: number): number {
    if (!(p > 0 && p < 1)) return p === 0 ? -Infinity : p === 1 ? Infinity : NaN;
    return invert((z) => ({ ...tails(z), density: density(z) }), { lower: p, upper: 1 - p }, 0);
  },
};

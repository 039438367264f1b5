import { logFWithTails } from './fDistribution.ts';
import { incompleteBeta } from './incompleteBeta.ts';
import { normal } from './normal.ts';

function twoSided(t: number, df: number): number {
  // As for quantiles: there is no such distribution.
  if (!(df > 0)) return NaN;
  if (df === Infinity) return 2 * normal.upper(Math.abs(t));
  const ratio = (t * t) / df;
  return incompleteBeta(1 / (1 + ratio), 1 / (1 + 1 / ratio), df / 2, 0.5).lower;
}

function upper(t: number, df: number): number {
  const outside = twoSided(t, df) / 2;
  return t < 0 ? 1 - outside : outside;
}

/**
 * Student's t distribution with `df` degrees of freedom, any number above 0 or ∞: `cdf`, the share below t; `upper`,
 * the share above; `twoSided`, the share further from 0 than t on either side; both exact in the far tail;
 * `quantile`, the t with the share p below, −∞ at 0 and ∞ at 1, NaN outside 0 to 1. NaN in, NaN out, as for degrees
 * of freedom that aren't above 0.
 * @source Abramowitz & Stegun 1964, 26.7.1: through the incomplete beta function
 * @example studentT.twoSided(2.11, 17) // 0.04998212471210542
 * @example studentT.quantile(0.975, 17) // 2.1098155778333165
 */
export const studentT = {
  cdf: (t: number, df: number): number => upper(-t, df),
  upper,
  twoSided,
  quantile(p: number, df: number): number {
    if (df === Infinity) return normal.quantile(p);
    if (!(p > 0 && p < 1 && df > 0)) return p === 0 ? -Infinity : p === 1 ? Infinity : NaN;
    if (p === 0.5) return 0;
    const outside = p < 0.5 ? 2 * p : 2 * (1 - p);
    // t² has the F distribution on 1 and df degrees of freedom.
    const t = Math.exp(logFWithTails({ lower: 1 - outside, upper: outside }, 1, df) / 2);
    return p < 0.5 ? -t : t;
  },
};

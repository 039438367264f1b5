import { isMissing, type Numbers } from './numbers.ts';

/**
 * p-values adjusted so that, of the results called real at a level, at most that share is expected to be false.
 * @param p p-values from 0 to 1 of several questions asked at once; a missing one doesn't count and stays missing
 * @returns the adjusted p-values in the same order, from 0 to 1
 * @source Benjamini & Hochberg 1995, Journal of the Royal Statistical Society B 57:289–300
 * @example benjaminiHochberg([0.01, 0.04, 0.03]) // [0.03, 0.04, 0.04]
 */
export function benjaminiHochberg(p: Numbers): number[] {
  return stepUp(p, () => 1);
}

/**
 * The same where the questions may depend on each other in any way.
 * @source Benjamini & Yekutieli 2001, The Annals of Statistics 29:1165–1188
 * @example benjaminiYekutieli([0.01, 0.04]) // [0.03, 0.06]
 */
export function benjaminiYekutieli(p: Numbers): number[] {
  return stepUp(p, (n) => Array.from({ length: n }, (_, i) => 1 / (i + 1)).reduce((sum, part) => sum + part, 0));
}

/** From the largest p down, each times n over its rank, never above the one before. */
function stepUp(p: Numbers, factor: (n: number) => number): number[] {
  const adjusted = Array.from(p, () => NaN);
  const order = adjusted.map((_, i) => i).filter((i) => !isMissing(p[i]));
  order.sort((a, b) => p[b] - p[a]);
  const n = order.length;
  let least = 1;
  order.forEach((i, behind) => {
    least = Math.min(least, ((factor(n) * n) / (n - behind)) * p[i]);
    adjusted[i] = least;
  });
  return adjusted;
}

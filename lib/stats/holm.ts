import { isMissing, type Numbers } from './numbers.ts';

/**
 * p-values adjusted so that calling anything real at a level is wrong anywhere at most that often.
 * @param p p-values from 0 to 1 of several questions asked at once; a missing one doesn't count and stays missing
 * @returns the adjusted p-values in the same order, from 0 to 1
 * @source Holm 1979, Scandinavian Journal of Statistics 6:65–70
 * @example holm([0.01, 0.04, 0.03]) // [0.03, 0.06, 0.06]
 */
export function holm(p: Numbers): number[] {
  const adjusted = Array.from(p, () => NaN);
  const order = adjusted.map((_, i) => i).filter((i) => !isMissing(p[i]));
  order.sort((a, b) => p[a] - p[b]);
  let most = 0;
  order.forEach((i, before) => {
    most = Math.max(most, Math.min(1, (order.length - before) * p[i]));
    adjusted[i] = most;
  });
  return adjusted;
}

/**
 * The same by the plain product of each p-value and their number.
 * @source Dunn 1961, Journal of the American Statistical Association 56:52–64
 * @example bonferroni([0.01, 0.04]) // [0.02, 0.08]
 */
export function bonferroni(p: Numbers): number[] {
  const n = Array.from(p).filter((value) => !isMissing(value)).length;
  return Array.from(p, (value) => (isMissing(value) ? NaN : Math.min(1, n * value)));
}

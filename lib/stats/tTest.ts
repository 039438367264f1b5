import { studentT } from './distributions/studentT.ts';
import { mean } from './mean.ts';
import { type Numbers, present, presentRows } from './numbers.ts';
import { sd } from './sd.ts';

export interface TTest {
  readonly mean: number;
  readonly se: number;
  readonly t: number;
  readonly df: number;
  /** Two-sided, that the mean is zero. */
  readonly p: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
}

/**
 * What follows from a mean, its standard error and the degrees of freedom alone, as a paper prints them.
 * @param mean a mean, or a difference of means, in any unit
 * @param se its standard error in the same unit
 * @param df degrees of freedom; for paired differences the pairs less one
 * @returns t, its two-sided p and the limits of the mean
 * @example tTestFromSummary(-1.5, 0.61, 10).p // 0.0337…
 */
export function tTestFromSummary(mean: number, se: number, df: number, level = 0.95): TTest {
  const t = mean / se;
  const reach = studentT.quantile((1 + level) / 2, df) * se;
  return { mean, se, t, df, p: studentT.twoSided(t, df), lower: mean - reach, upper: mean + reach, level };
}

/**
 * Student's t test of one sample, or of paired differences, against zero.
 * @param values numbers in any one unit; a missing one is left out and counted
 * @returns the mean with its limits and two-sided p; NaN of fewer than two
 * @source Student 1908, Biometrika 6:1–25
 * @example tTest([1.2, 2.4, 1.3, 1.3, 0, 1, 1.8, 0.8, 4.6, 1.4]).p // 0.00283289019738427
 */
export function tTest(values: Numbers, level = 0.95): TTest & { readonly n: number; readonly missing: number } {
  const kept = present(values);
  const n = kept.length;
  return { n, missing: values.length - n, ...tTestFromSummary(mean(kept), sd(kept) / Math.sqrt(n), n - 1, level) };
}

/**
 * Student's t test of pairs: `tTest` of a − b.
 * @param a numbers in any one unit; a pair with either missing is left out and counted
 * @param b numbers in the same unit, as many
 * @example pairedTTest([3, 5, 8], [1, 4, 4]).mean // 2.3333333333333335
 */
export function pairedTTest(a: Numbers, b: Numbers, level = 0.95): ReturnType<typeof tTest> {
  const { columns, missing } = presentRows([a, b]);
  return {
    ...tTest(
      columns[0].map((value, row) => value - columns[1][row]),
      level,
    ),
    missing,
  };
}

/**
 * Welch's t test of two unpaired groups, which need not vary alike.
 * @param a values of the first group in any one unit; a missing one is left out and counted
 * @param b values of the second group in the same unit
 * @returns `mean`, the mean of a minus that of b, with its limits and two-sided p; NaN where a group has fewer than two
 * @source Welch 1947, Biometrika 34:28–35
 * @example welchTest([1, 2, 3], [4, 6, 8]).df // 2.941…
 */
export function welchTest(a: Numbers, b: Numbers, level = 0.95): TTest & { readonly missing: number } {
  const [first, second] = [present(a), present(b)];
  const parts = [first, second].map((group) => sd(group) ** 2 / group.length);
  const variance = parts[0] + parts[1];
  const df = variance ** 2 / (parts[0] ** 2 / (first.length - 1) + parts[1] ** 2 / (second.length - 1));
  const missing = a.length + b.length - first.length - second.length;
  return { missing, ...tTestFromSummary(mean(first) - mean(second), Math.sqrt(variance), df, level) };
}

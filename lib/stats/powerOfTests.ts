import { fDistribution } from './distributions/fDistribution.ts';
import { noncentralF } from './distributions/noncentralF.ts';
import { normal } from './distributions/normal.ts';
import { studentT } from './distributions/studentT.ts';

/**
 * The power of an F test.
 * @param df1 degrees of freedom of what is tested
 * @param df2 degrees of freedom of the residuals
 * @param ncp noncentrality: Cohen's f² times the number of rows
 * @source Cohen 1988, Statistical Power Analysis for the Behavioral Sciences, 2nd edition, ch. 8 and 9
 * @example powerOfF(1, 58, 0.15 * 60) // 0.8389…
 */
export function powerOfF(df1: number, df2: number, ncp: number, level = 0.05): number {
  return noncentralF.upper(fDistribution.quantile(1 - level, df1, df2), df1, df2, ncp);
}

/**
 * The power of the two-sided test that a correlation is zero, by Fisher's transformation with its correction for bias.
 * @param n pairs
 * @param r the true correlation, −1 to 1
 * @source Cohen 1988, Statistical Power Analysis for the Behavioral Sciences, 2nd edition, ch. 3
 * @example powerOfCorrelation(84, 0.3) // 0.7996…
 */
export function powerOfCorrelation(n: number, r: number, level = 0.05): number {
  const t = studentT.quantile(1 - level / 2, n - 2);
  const cut = Math.atanh(Math.sqrt(t ** 2 / (t ** 2 + n - 2)));
  const z = Math.atanh(r) + r / (2 * (n - 1));
  return normal.upper((cut - z) * Math.sqrt(n - 3)) + normal.upper((cut + z) * Math.sqrt(n - 3));
}

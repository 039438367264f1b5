import { normal } from './distributions/normal.ts';
import { studentT } from './distributions/studentT.ts';
import { mean } from './mean.ts';
import { type Numbers, presentRows } from './numbers.ts';

export interface Correlation {
  readonly n: number;
  readonly r: number;
  readonly t: number;
  readonly df: number;
  /** Two-sided, that there is no correlation. */
  readonly p: number;
  /** Limits by Fisher's z, NaN of fewer than four pairs. */
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
}

/**
 * Pearson's correlation.
 * @param x numbers in any unit; a pair with either missing is left out and counted
 * @param y numbers in any unit, as many
 * @returns r from −1 to 1 with its two-sided p and limits; NaN where either side doesn't vary
 * @source Pearson 1896, Philosophical Transactions A 187:253–318; Fisher 1921, Metron 1:3–32
 * @example pearson([1, 2, 3, 4], [1, 3, 2, 4]).r // 0.8
 */
export function pearson(x: Numbers, y: Numbers, level = 0.95): Correlation & { readonly missing: number } {
  const { columns, missing } = presentRows([x, y]);
  const [u, v] = columns.map((column) => {
    const centre = mean(column);
    return column.map((value) => value - centre);
  });
  let [uu, vv, uv] = [0, 0, 0];
  for (let i = 0; i < u.length; i++) {
    uu += u[i] * u[i];
    vv += v[i] * v[i];
    uv += u[i] * v[i];
  }
  const r = Math.max(-1, Math.min(1, uv / Math.sqrt(uu * vv)));
  return { ...correlationTest(r, u.length, level), missing };
}

/**
 * What follows from a correlation and a number of pairs alone, as a paper prints them.
 * @param r Pearson's correlation, −1 to 1
 * @param n how many pairs
 * @source Fisher 1915, Biometrika 10:507–521
 * @example correlationTest(-0.457, 19).p // 0.0491…
 */
export function correlationTest(r: number, n: number, level = 0.95): Correlation {
  const df = n - 2;
  const t = r * Math.sqrt(df / ((1 - r) * (1 + r)));
  const reach = n > 3 ? normal.quantile((1 + level) / 2) / Math.sqrt(n - 3) : NaN;
  const lower = Math.tanh(Math.atanh(r) - reach);
  const upper = Math.tanh(Math.atanh(r) + reach);
  return { n, r, t, df, p: df > 0 ? studentT.twoSided(t, df) : NaN, lower, upper, level };
}

import { normal } from './distributions/normal.ts';
import { mean } from './mean.ts';
import { type Numbers, presentRows } from './numbers.ts';
import { pearson } from './pearson.ts';
import { variance } from './sd.ts';

export interface Concordance {
  readonly n: number;
  readonly missing: number;
  /** Lin's coefficient, 1 where every pair agrees exactly, 0 where there is no agreement. */
  readonly value: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
}

/**
 * Lin's concordance correlation: how near the pairs lie to the line of equality, not just to any line.
 * @param a readings in any one unit; a pair with either missing is left out and counted
 * @param b readings of the same subjects in the same unit
 * @returns −1 to 1, limits by the z transformation; NaN where neither side varies
 * @source Lin 1989, Biometrics 45:255–268, with the variance as corrected in 2000, Biometrics 56:324–325
 * @example concordance([1, 2, 3], [1, 2, 3]).value // 1
 */
export function concordance(a: Numbers, b: Numbers, level = 0.95): Concordance {
  const { columns, missing } = presentRows([a, b]);
  const [x, y] = columns;
  const n = x.length;
  const { r } = pearson(x, y);
  // Variances with n below, as in the paper.
  const [vx, vy] = [variance(x), variance(y)].map((v) => (v * (n - 1)) / n);
  const shift = mean(y) - mean(x);
  const geometric = Math.sqrt(vx * vy);
  const value = (2 * r * geometric) / (vx + vy + shift * shift);
  const u2 = (shift * shift) / geometric;
  const c = value;
  const variancePart =
    ((1 - r * r) * c * c * (1 - c * c)) / (r * r) + (2 * c ** 3 * (1 - c) * u2) / r - (c ** 4 * u2 * u2) / (2 * r * r);
  const seZ = Math.sqrt(variancePart / (n - 2)) / (1 - c * c);
  const reach = normal.quantile((1 + level) / 2) * seZ;
  return {
    n,
    missing,
    value,
    lower: c === 1 ? 1 : Math.tanh(Math.atanh(c) - reach),
    upper: c === 1 ? 1 : Math.tanh(Math.atanh(c) + reach),
    level,
  };
}

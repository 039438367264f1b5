import { normal } from './distributions/normal.ts';
import { studentT } from './distributions/studentT.ts';
import { type Coefficient, linearRegression } from './linearRegression.ts';
import { type Numbers, presentRows } from './numbers.ts';
import { sd } from './sd.ts';
import { tTest } from './tTest.ts';

export interface Limits {
  readonly lower: number;
  readonly upper: number;
  /** The standard error of either limit. */
  readonly seLimit: number;
  /** Where the lower limit itself may lie, and the upper one. */
  readonly lowerInterval: readonly [number, number];
  readonly upperInterval: readonly [number, number];
}

/** By the 1999 paper; `in1986` by the older one, with twice the SD and an approximate standard error. */
export interface LimitsOfAgreement extends Limits {
  readonly n: number;
  readonly missing: number;
  /** The mean of a − b, the bias, with its standard error, limits, and the two-sided p that it is zero. */
  readonly mean: number;
  readonly se: number;
  readonly meanInterval: readonly [number, number];
  readonly t: number;
  readonly p: number;
  /** The standard deviation of a − b. */
  readonly sd: number;
  readonly level: number;
  readonly in1986: Limits;
  /** The slope of a − b on their mean: whether the two drift apart where the readings are larger. */
  readonly trend: Coefficient;
}

/**
 * The limits of agreement of two observers or methods: between them lie 95 of 100 differences.
 * @param a readings by the one, in any one unit; a pair with either missing is left out and counted
 * @param b readings of the same subjects by the other, in the same unit
 * @param level the share of differences between the limits and the level of all intervals, 0.95 where not given
 * @returns everything in the unit of the readings; NaN of fewer than two pairs
 * @source Bland & Altman 1999, Statistical Methods in Medical Research 8:135–160; 1986, Lancet i:307–310
 * @example limitsOfAgreement([10, 12, 11, 14], [9, 12, 12, 12]).mean // 0.5
 */
export function limitsOfAgreement(a: Numbers, b: Numbers, level = 0.95): LimitsOfAgreement {
  const { columns, missing } = presentRows([a, b]);
  const [first, second] = columns;
  const differences = first.map((value, row) => value - second[row]);
  const n = differences.length;
  const spread = sd(differences);
  const { mean, se, t, p, lower, upper } = tTest(differences, level);
  const reach = studentT.quantile((1 + level) / 2, n - 1);
  const z = normal.quantile((1 + level) / 2);
  const limits = (width: number, seLimit: number): Limits => {
    const [low, high] = [mean - width, mean + width];
    return {
      lower: low,
      upper: high,
      seLimit,
      lowerInterval: [low - reach * seLimit, low + reach * seLimit],
      upperInterval: [high - reach * seLimit, high + reach * seLimit],
    };
  };
  const means = first.map((value, row) => (value + second[row]) / 2);
  return {
    n,
    missing,
    mean,
    se,
    meanInterval: [lower, upper],
    t,
    p,
    sd: spread,
    level,
    ...limits(z * spread, spread * Math.sqrt(1 / n + (z * z) / (2 * (n - 1)))),
    in1986: limits(2 * spread, spread * Math.sqrt(3 / n)),
    trend: linearRegression(means, differences, { level }).coefficients[1],
  };
}

/**
 * The standard deviation of the difference between single readings, where what was compared are means of several.
 * @param sdOfMeans the standard deviation of the differences between the means, in any unit
 * @param methods for each of the two how far single readings scatter and how many each mean is of
 * @source Bland & Altman 1999, Statistical Methods in Medical Research 8:135–160, section 5.1
 * @example sdOfSingleDifferences(33.2, [{ withinSd: 15.3, readings: 2 }, { withinSd: 19.9, readings: 2 }]) // 37.64…
 */
export function sdOfSingleDifferences(
  sdOfMeans: number,
  methods: readonly { readonly withinSd: number; readonly readings: number }[],
): number {
  const hidden = methods.map(({ withinSd, readings }) => (1 - 1 / readings) * withinSd ** 2);
  return Math.sqrt(hidden.reduce((sum, part) => sum + part, sdOfMeans ** 2));
}

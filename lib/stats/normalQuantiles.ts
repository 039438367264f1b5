import { normal } from './distributions/normal.ts';
import { type Numbers, present } from './numbers.ts';
import { pearson } from './pearson.ts';

/** Numbers in order beside where a normal sample of that size would have them. */
export interface NormalQuantiles {
  /** Ascending, in the unit of the values. */
  readonly sorted: Float64Array;
  /** In standard deviations, as many. */
  readonly expected: Float64Array;
  /** How straight a line the two make, 0 to 1; NaN of fewer than three or where nothing varies. */
  readonly straightness: number;
}

/**
 * Quantiles against those of the normal distribution: on a straight line where the values are normal.
 * @param values any numbers; a missing one is left out
 * @source Wilk & Gnanadesikan 1968, Biometrika 55:1–17; positions (i − a) / (n + 1 − 2a) with a = 3/8 up to ten values
 *   and 1/2 beyond (Blom 1958); straightness: Filliben 1975, Technometrics 17:111–117
 * @example normalQuantiles([2, 1, 3]).expected[1] // 0
 */
export function normalQuantiles(values: Numbers): NormalQuantiles {
  const sorted = present(values).sort();
  const n = sorted.length;
  const a = n <= 10 ? 3 / 8 : 1 / 2;
  const expected = sorted.map((_, i) => normal.quantile((i + 1 - a) / (n + 1 - 2 * a)));
  return { sorted, expected, straightness: n < 3 ? NaN : pearson(sorted, expected).r };
}

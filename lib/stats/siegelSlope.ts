import { median } from './median.ts';
import { type Numbers, presentRows } from './numbers.ts';

export interface SiegelSlope {
  readonly n: number;
  readonly missing: number;
  /** In units of y a unit of x. */
  readonly slope: number;
  /** The median of y − slope·x. */
  readonly intercept: number;
}

/**
 * Siegel's slope: for each point the median of its slopes to all others, then the median of those. Nearly half of
 * the points may be wild.
 * @param x numbers in any unit; a pair with either missing is left out and counted
 * @param y numbers in any unit, as many
 * @returns the slope and the intercept; NaN where no two x differ
 * @source Siegel 1982, Biometrika 69:242–244
 * @example siegelSlope([0, 1, 2, 3], [1, 3, 5, 100]).slope // 2
 */
export function siegelSlope(x: Numbers, y: Numbers): SiegelSlope {
  const { columns, missing } = presentRows([x, y]);
  const [u, v] = columns;
  const n = u.length;
  const slopes = new Float64Array(n);
  const middles = u.map((_, i) => {
    // The slope to a point with the same x stands as missing, which the median leaves out.
    for (let j = 0; j < n; j++) slopes[j] = u[j] === u[i] ? NaN : (v[j] - v[i]) / (u[j] - u[i]);
    return median(slopes);
  });
  const slope = median(middles);
  return { n, missing, slope, intercept: median(v.map((value, row) => value - slope * u[row])) };
}

import { degree, halfTurn } from './degrees.ts';
import { type FitFailure, tooFew } from './fitFailure.ts';
import type { Line } from './line.ts';
import { about, centreOf, type Points, presentPoints } from './points.ts';

/** The line through the centre of the points, directed so that x grows, or y where x stays. */
export interface FittedLine extends Line {
  /** Degrees in [0, 180), counter-clockwise from the x axis with y up. */
  readonly angle: number;
  /** The standard error of `angle` in degrees, from the points' own scatter; NaN of two points. */
  readonly angleSe: number;
  /** The standard deviation of the points' distances from the line, in their unit; NaN of two points. */
  readonly residualSd: number;
  readonly n: number;
  readonly missing: number;
}

/**
 * The line from which points are least far, measured at right angles to it: neither x nor y is the cause of the other.
 * @param points two or more, in any one length unit; a missing one is left out and counted
 * @returns the line, or a `FitFailure` of fewer than two points or where no direction stands out
 * @source Pearson 1901, Philosophical Magazine 6:559–572
 * @example lineByTotalLeastSquares([0, 0, 1, 1, 2, 2]).angle // 45
 */
export function lineByTotalLeastSquares(points: Points): FittedLine | FitFailure {
  const { points: kept, missing } = presentPoints(points);
  const n = kept.length;
  if (n < 2) return tooFew(n, 2, missing);
  const centre = centreOf(kept);
  let [xx, yy, xy] = [0, 0, 0];
  const away = about(centre, kept);
  for (const [x, y] of away) {
    xx += x * x;
    yy += y * y;
    xy += x * y;
  }
  if (!(Math.hypot(xx - yy, 2 * xy) > 1e-12 * (xx + yy)))
    return { failure: 'The points lie alike in all directions; place some further apart along the line', n, missing };
  const turn = Math.atan2(2 * xy, xx - yy) / 2;
  const direction = [Math.cos(turn), Math.sin(turn)] as const;
  let [along, across] = [0, 0];
  for (const [x, y] of away) {
    along += (x * direction[0] + y * direction[1]) ** 2;
    across += (y * direction[0] - x * direction[1]) ** 2;
  }
  const residualSd = n > 2 ? Math.sqrt(across / (n - 2)) : NaN;
  return {
    point: centre,
    direction,
    angle: halfTurn(turn / degree),
    angleSe: residualSd / Math.sqrt(along) / degree,
    residualSd,
    n,
    missing,
  };
}

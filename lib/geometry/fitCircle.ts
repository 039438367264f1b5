import { type FitFailure, isFitFailure, tooFew } from './fitFailure.ts';
import { about, centreOf, type Point, type Points, presentPoints } from './points.ts';
import { solveNormal } from './solveNormal.ts';

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly centre: Point;
  readonly radius: number;
  /** The standard deviation of the points' distances from the circle, in their unit; NaN of three points. */
  readonly residualSd: number;
  readonly n: number;
  readonly missing: number;
}

/**
 * The circle from which points are least far.
 * @param points three or more, not on a line, in any one length unit; a missing one is left out and counted
 * @returns centre and radius in the unit of the points, or a `FitFailure` with the reason
 * @source Gander, Golub & Strebel 1994, BIT 34:558–578, section 3: Gauss–Newton steps on the distances
 * @example fitCircle([5, 0, 0, 5, -5, 0, 3, 4]).radius // 5
 */
export function fitCircle(points: Points): Circle | FitFailure {
  const start = fitCircleAlgebraic(points);
  if (isFitFailure(start)) return start;
  const kept = presentPoints(points).points;
  let { x, y, radius } = start;
  for (let turn = 0; turn < 200; turn++) {
    const rows = kept.map(([px, py]) => {
      const away = Math.hypot(px - x, py - y);
      return { slopes: [(px - x) / away, (py - y) / away, 1], value: away - radius };
    });
    const step = solveNormal(rows);
    if (!step) break;
    x += step[0];
    y += step[1];
    radius += step[2];
    if (Math.hypot(...step) <= 1e-14 * radius) break;
  }
  return circle(kept, [x, y], radius, start.missing);
}

/**
 * The circle by regressing x² + y² on x and y: no iteration, but short arcs come out too small.
 * @param points three or more, not on a line, in any one length unit; a missing one is left out and counted
 * @returns centre and radius in the unit of the points, or a `FitFailure` with the reason
 * @source Kåsa 1976, IEEE Transactions on Instrumentation and Measurement 25:8–14
 * @example fitCircleAlgebraic([5, 0, 0, 5, -5, 0]).radius // 5
 */
export function fitCircleAlgebraic(points: Points): Circle | FitFailure {
  const { points: kept, missing } = presentPoints(points);
  if (kept.length < 3) return tooFew(kept.length, 3, missing);
  const middle = centreOf(kept);
  const away = about(middle, kept);
  const rows = away.map(([x, y]) => ({ slopes: [2 * x, 2 * y, 1], value: x * x + y * y }));
  const solution = solveNormal(rows);
  if (!solution) return { failure: 'The points lie on one line; place some off it', n: kept.length, missing };
  const [x, y, rest] = solution;
  return circle(kept, [middle[0] + x, middle[1] + y], Math.sqrt(rest + x * x + y * y), missing);
}

function circle(points: readonly Point[], centre: Point, radius: number, missing: number): Circle {
  const n = points.length;
  const squares = points.reduce((sum, [px, py]) => sum + (Math.hypot(px - centre[0], py - centre[1]) - radius) ** 2, 0);
  const residualSd = n > 3 ? Math.sqrt(squares / (n - 3)) : NaN;
  return { x: centre[0], y: centre[1], centre, radius, residualSd, n, missing };
}

import { degree } from './degrees.ts';
import { type Axes, type Ellipse, ellipseOf, inAxes } from './ellipse.ts';
import { fitEllipse } from './fitEllipse.ts';
import { type FitFailure, isFitFailure } from './fitFailure.ts';
import { nearestOnEllipse } from './nearestOnEllipse.ts';
import { type Point, type Points, presentPoints } from './points.ts';
import { type Equation, solveNormal } from './solveNormal.ts';

/**
 * The ellipse from which points are least far, by damped steps on the distances from the direct fit on. The direct fit
 * shrinks where points are few or cover part of the outline; this one doesn't.
 * @param points five or more, not all on a line, in any one length unit; a missing one is left out and counted
 * @returns as `fitEllipse`
 * @source Gander, Golub & Strebel 1994, BIT 34:558–578; Ahn, Rauh & Warnecke 2001, Pattern Recognition 34:2283–2303
 * @example fitEllipseGeometric([5, 0, 0, 3, -5, 0, 0, -3, 3, 2.4]).semiMinor // 3
 */
export function fitEllipseGeometric(points: Points): Ellipse | FitFailure {
  const start = fitEllipse(points);
  if (isFitFailure(start)) return start;
  const kept = presentPoints(points).points;
  let axes: Axes = {
    x: start.x,
    y: start.y,
    a: start.semiMajor,
    b: start.semiMinor,
    turn: start.turn * degree,
  };
  let squares = sumOfSquares(kept, axes);
  for (let turn = 0, damping = 1e-3; turn < 500 && damping < 1e12; turn++) {
    const step = solveNormal(
      kept.map((point) => equation(point, axes)),
      damping,
    );
    if (!step) break;
    const moved = {
      x: axes.x + step[0],
      y: axes.y + step[1],
      a: axes.a + step[2],
      b: axes.b + step[3],
      turn: axes.turn + step[4],
    };
    const after = moved.a > 0 && moved.b > 0 ? sumOfSquares(kept, moved) : Infinity;
    if (after > squares) {
      damping *= 10;
      continue;
    }
    [axes, squares, damping] = [moved, after, damping / 10];
    if (Math.hypot(step[0], step[1], step[2], step[3]) <= 1e-13 * Math.hypot(axes.a, axes.b)) break;
  }
  return ellipseOf(axes, kept, start.missing);
}

function sumOfSquares(points: readonly Point[], axes: Axes): number {
  return points.reduce((sum, point) => {
    const [u, v] = inAxes(point, axes);
    const [x, y] = nearestOnEllipse([u, v], axes.a, axes.b);
    return sum + (u - x) ** 2 + (v - y) ** 2;
  }, 0);
}

/** How the signed distance of a point changes with the five parameters: the ellipse moves by its own outward normal. */
function equation(point: Point, axes: Axes): Equation {
  const { a, b, turn } = axes;
  const [u, v] = inAxes(point, axes);
  const [x, y] = nearestOnEllipse([u, v], a, b);
  const length = Math.hypot(x / (a * a), y / (b * b));
  const [nx, ny] = [x / (a * a) / length, y / (b * b) / length];
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return {
    slopes: [nx * cos - ny * sin, nx * sin + ny * cos, (nx * x) / a, (ny * y) / b, ny * u - nx * v],
    value: nx * (u - x) + ny * (v - y),
  };
}

import { degree, halfTurn } from './degrees.ts';
import { nearestOnEllipse } from './nearestOnEllipse.ts';
import type { Point } from './points.ts';

export interface Ellipse {
  readonly x: number;
  readonly y: number;
  readonly centre: Point;
  readonly semiMajor: number;
  readonly semiMinor: number;
  /** Degrees in [0, 180), counter-clockwise from the x axis to the longer axis with y up. */
  readonly turn: number;
  /** The standard deviation of the points' distances from the ellipse, in their unit; NaN of five points. */
  readonly residualSd: number;
  readonly n: number;
  readonly missing: number;
}

/** An ellipse by its axes: `a` lies at `turn` radians from the x axis, `b` at right angles; either may be the longer. */
export interface Axes {
  readonly x: number;
  readonly y: number;
  readonly a: number;
  readonly b: number;
  readonly turn: number;
}

/** A point as the ellipse's own axes see it. */
export function inAxes([px, py]: Point, { x, y, turn }: Axes): Point {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  return [cos * (px - x) + sin * (py - y), cos * (py - y) - sin * (px - x)];
}

/** The ellipse as it is handed out, with its distance from the points. */
export function ellipseOf(axes: Axes, points: readonly Point[], missing: number): Ellipse {
  const { x, y, a, b, turn } = axes;
  let squares = 0;
  for (const point of points) {
    const seen = inAxes(point, axes);
    const on = nearestOnEllipse(seen, a, b);
    squares += (seen[0] - on[0]) ** 2 + (seen[1] - on[1]) ** 2;
  }
  const n = points.length;
  return {
    x,
    y,
    centre: [x, y],
    semiMajor: Math.max(a, b),
    semiMinor: Math.min(a, b),
    turn: halfTurn(turn / degree + (a < b ? 90 : 0)),
    residualSd: n > 5 ? Math.sqrt(squares / (n - 5)) : NaN,
    n,
    missing,
  };
}

import type { Line } from './line.ts';
import type { Point } from './points.ts';

/**
 * Where two lines cross.
 * @returns the point; NaN where they are parallel or a part is missing
 * @example intersection(lineThrough([0, 0], [2, 2]), lineThrough([0, 2], [2, 0])) // [1, 1]
 */
export function intersection(a: Line, b: Line): Point {
  const sine = a.direction[0] * b.direction[1] - a.direction[1] * b.direction[0];
  if (!(Math.abs(sine) > 1e-12)) return [NaN, NaN];
  const [dx, dy] = [b.point[0] - a.point[0], b.point[1] - a.point[1]];
  const along = (dx * b.direction[1] - dy * b.direction[0]) / sine;
  return [a.point[0] + along * a.direction[0], a.point[1] + along * a.direction[1]];
}

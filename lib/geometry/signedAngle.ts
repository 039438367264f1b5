import { degree } from './degrees.ts';
import type { Point } from './points.ts';

/**
 * The angle from one direction to another.
 * @param from a direction, of any length
 * @param to a direction, of any length
 * @returns degrees in (−180, 180], positive counter-clockwise with y up; NaN where a direction is zero or missing
 * @example signedAngle([1, 0], [0, 3]) // 90
 */
export function signedAngle(from: Point, to: Point): number {
  const across = from[0] * to[1] - from[1] * to[0];
  const along = from[0] * to[0] + from[1] * to[1];
  if (across === 0 && along === 0) return NaN;
  const angle = Math.atan2(across, along) / degree;
  return angle === -180 ? 180 : angle;
}

/**
 * The angle at a corner.
 * @param a a point on the one leg
 * @param corner where the legs meet
 * @param b a point on the other leg
 * @returns degrees in [0, 180]; NaN where a point is missing or lies on the corner
 * @example angleAt([4, 0], [0, 0], [0, 3]) // 90
 */
export function angleAt(a: Point, corner: Point, b: Point): number {
  return Math.abs(signedAngle([a[0] - corner[0], a[1] - corner[1]], [b[0] - corner[0], b[1] - corner[1]]));
}

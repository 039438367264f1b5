import type { Line } from './line.ts';
import type { Point } from './points.ts';

/**
 * How far a point lies from a line.
 * @returns the distance in the unit of the points, positive to the left of the line's direction with y up; NaN where a
 *   part is missing
 * @example distancePointLine([3, 2], lineThrough([0, 0], [1, 0])) // 2
 */
export function distancePointLine(point: Point, { point: on, direction }: Line): number {
  return direction[0] * (point[1] - on[1]) - direction[1] * (point[0] - on[0]);
}

/**
 * The point of a line that is nearest to a point.
 * @example nearestOnLine([3, 2], lineThrough([0, 0], [1, 0])) // [3, 0]
 */
export function nearestOnLine(point: Point, { point: on, direction }: Line): Point {
  const along = direction[0] * (point[0] - on[0]) + direction[1] * (point[1] - on[1]);
  return [on[0] + along * direction[0], on[1] + along * direction[1]];
}

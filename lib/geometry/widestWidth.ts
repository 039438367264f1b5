import { degree } from './degrees.ts';
import { type Point, type Points, presentPoints } from './points.ts';

export interface Width {
  /** In the unit of the points; NaN of none. */
  readonly width: number;
  /** The points furthest to the left and to the right of the axis, looking along it. */
  readonly left: Point;
  readonly right: Point;
}

/**
 * The widest width of an outline across an axis, as a calliper held along the axis reads it.
 * @param points any points, in any one length unit; a missing one is left out
 * @param axis the axis in degrees, counter-clockwise from the x axis with y up; 90 where not given
 * @returns the width and the two points it is taken between
 * @example widestWidth([-3, 0, 0, 5, 4, 1]).width // 7
 */
export function widestWidth(points: Points, axis = 90): Width {
  const across = [-Math.sin(axis * degree), Math.cos(axis * degree)];
  let [left, right]: Point[] = [
    [NaN, NaN],
    [NaN, NaN],
  ];
  let [furthestLeft, furthestRight] = [-Infinity, Infinity];
  for (const point of presentPoints(points).points) {
    const out = point[0] * across[0] + point[1] * across[1];
    if (out > furthestLeft) [furthestLeft, left] = [out, point];
    if (out < furthestRight) [furthestRight, right] = [out, point];
  }
  return { width: furthestLeft === -Infinity ? NaN : furthestLeft - furthestRight, left, right };
}

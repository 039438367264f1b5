import type { Matrix } from './matrix.ts';
import { type Point, type Points, toPoints } from './points.ts';

/**
 * Where a map of the plane takes points: a similarity's or a projective fit's `matrix`.
 * @param matrix three rows of three
 * @param points in the unit that the map expects
 * @returns as many points in the unit that the map gives; NaN for a missing one and for one on the horizon
 * @example transformPoints([[2, 0, 1], [0, 2, 0], [0, 0, 1]], [3, 4]) // [[7, 8]]
 */
export function transformPoints(matrix: Matrix, points: Points): Point[] {
  return toPoints(points).map((point) => transformPoint(matrix, point));
}

/** The same for one point, none of its coordinates missing. */
export function transformPoint([first, second, third]: Matrix, [x, y]: Point): Point {
  const depth = third[0] * x + third[1] * y + third[2];
  if (depth === 0) return [NaN, NaN];
  return [(first[0] * x + first[1] * y + first[2]) / depth, (second[0] * x + second[1] * y + second[2]) / depth];
}

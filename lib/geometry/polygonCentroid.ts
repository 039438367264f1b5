import type { Point, Points } from './points.ts';
import { polygonMoments } from './polygonMoments.ts';

/**
 * The centre of gravity of the area inside an outline.
 * @param points the corners in order, either way round, in any one length unit; a missing one is left out
 * @returns the point, NaN where the outline has no area
 * @example polygonCentroid([0, 0, 6, 0, 6, 3, 0, 3]) // [3, 1.5]
 */
export function polygonCentroid(points: Points): Point {
  const { origin, area, x, y } = polygonMoments(points);
  return area === 0 ? [NaN, NaN] : [origin[0] + x / area, origin[1] + y / area];
}

import { type Points, presentPoints } from './points.ts';

/**
 * The length of a closed outline.
 * @param points the corners in order, in any one length unit, the first not repeated; a missing one is left out
 * @returns the length in the unit of the points; NaN of no corner at all
 * @example polygonPerimeter([0, 0, 3, 0, 0, 4]) // 12
 */
export function polygonPerimeter(points: Points): number {
  const corners = presentPoints(points).points;
  if (corners.length === 0) return NaN;
  return corners.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length];
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);
}

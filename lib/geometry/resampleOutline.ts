import { type Point, type Points, presentPoints } from './points.ts';

/**
 * Points at equal steps along a closed outline, from its first point on and the same way round, so that two outlines
 * traced by hand can be laid over each other point by point.
 * @param points the corners in order, in any one length unit, the first not repeated; a missing one is left out
 * @param count how many points are wanted
 * @returns that many points; none of an outline without corners
 * @example resampleOutline([0, 0, 2, 0, 2, 2, 0, 2], 8)[1] // [1, 0]
 */
export function resampleOutline(points: Points, count: number): Point[] {
  const corners = presentPoints(points).points;
  if (corners.length === 0) return [];
  const lengths = corners.map(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length];
    return Math.hypot(nextX - x, nextY - y);
  });
  const step = lengths.reduce((sum, length) => sum + length, 0) / count;
  let edge = 0;
  let before = 0;
  return Array.from({ length: count }, (_, i) => {
    while (edge < corners.length - 1 && before + lengths[edge] <= i * step) before += lengths[edge++];
    const [x, y] = corners[edge];
    const [nextX, nextY] = corners[(edge + 1) % corners.length];
    const share = lengths[edge] > 0 ? (i * step - before) / lengths[edge] : 0;
    return [x + share * (nextX - x), y + share * (nextY - y)] as const;
  });
}

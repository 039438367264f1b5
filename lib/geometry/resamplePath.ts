import { type Point, type Points, presentPoints } from './points.ts';

/**
 * Points at equal steps along an open path, its two ends among them.
 * @param points in order, in any one length unit; a missing one is left out
 * @param count how many points are wanted, two or more
 * @returns that many points; none of a path without points
 * @example resamplePath([0, 0, 2, 0, 2, 2], 5)[3] // [2, 1]
 */
export function resamplePath(points: Points, count: number): Point[] {
  const path = presentPoints(points).points;
  if (path.length === 0) return [];
  const reached = [0];
  for (let i = 1; i < path.length; i++)
    reached.push(reached[i - 1] + Math.hypot(path[i][0] - path[i - 1][0], path[i][1] - path[i - 1][1]));
  const whole = reached[path.length - 1];
  let edge = 0;
  return Array.from({ length: count }, (_, i) => {
    const goal = (whole * i) / (count - 1);
    while (edge < path.length - 2 && reached[edge + 1] < goal) edge++;
    const length = reached[edge + 1] - reached[edge];
    const [from, to] = [path[edge], path[Math.min(edge + 1, path.length - 1)]];
    const share = length > 0 ? Math.min(1, (goal - reached[edge]) / length) : 0;
    return [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])] as const;
  });
}

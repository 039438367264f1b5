import { type Point, type Points, presentPoints } from './points.ts';

/**
 * The corners of the smallest convex outline round some points, as a rubber band lies.
 * @param points any points, in any order; a missing one is left out
 * @returns its corners counter-clockwise with y up, from the leftmost; points on an edge are no corners
 * @source Andrew 1979, Information Processing Letters 9:216–219
 * @example convexHull([0, 0, 2, 0, 1, 0.5, 2, 2, 0, 2]) // [[0, 0], [2, 0], [2, 2], [0, 2]]
 */
export function convexHull(points: Points): Point[] {
  const sorted = presentPoints(points).points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const distinct = sorted.filter((p, i) => i === 0 || p[0] !== sorted[i - 1][0] || p[1] !== sorted[i - 1][1]);
  if (distinct.length < 3) return distinct;
  return [...lowerChain(distinct), ...lowerChain(distinct.reverse())];
}

/** The chain that turns left all the way, without its last point, with which the other chain begins. */
function lowerChain(points: readonly Point[]): Point[] {
  const chain: Point[] = [];
  for (const point of points) {
    while (chain.length >= 2 && !turnsLeft(chain[chain.length - 2], chain[chain.length - 1], point)) chain.pop();
    chain.push(point);
  }
  return chain.slice(0, -1);
}

function turnsLeft(a: Point, b: Point, c: Point): boolean {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) > 0;
}

import type { Point } from './points.ts';

/** A line without ends: any point on it and its direction, of length 1. */
export interface Line {
  readonly point: Point;
  readonly direction: Point;
}

/**
 * The line through two points, directed from the first to the second.
 * @returns the line; its direction is NaN where the points coincide or one is missing
 * @example lineThrough([0, 0], [0, 2]).direction // [0, 1]
 */
export function lineThrough(from: Point, to: Point): Line {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy);
  return { point: from, direction: [dx / length, dy / length] };
}

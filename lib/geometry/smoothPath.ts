import { type Point, type Points, presentPoints } from './points.ts';

/**
 * A smooth path through points that were placed along a curve, so that its length and the area behind it are not those
 * of the chords.
 * @param points in order along the curve, in any one length unit; a missing one, and one that repeats the one before,
 *   is left out
 * @param steps into how many pieces the way from each point to the next is cut
 * @returns the points with those between them, the first and the last as they were; fewer than three come back as they are
 * @source Catmull & Rom 1974, in Computer Aided Geometric Design, pp. 317–326, in the centripetal form of Yuksel, Schaefer &
 *   Keyser 2011, Computer-Aided Design 43:747–755, which makes no loops
 * @example smoothPath([0, 0, 1, 0, 2, 0], 2) // [[0, 0], [0.5, 0], [1, 0], [1.5, 0], [2, 0]]
 */
export function smoothPath(points: Points, steps: number): Point[] {
  const present = presentPoints(points).points;
  const path = present.filter(([x, y], i) => i === 0 || x !== present[i - 1][0] || y !== present[i - 1][1]);
  const last = path.length - 1;
  if (last < 2) return path;
  const before = beyond(path[0], path[1], path[2]);
  const after = beyond(path[last], path[last - 1], path[last - 2]);
  const all = [before, ...path, after];
  const smooth: Point[] = [];
  for (let i = 0; i < last; i++) {
    const [a, b, c, d] = [all[i], all[i + 1], all[i + 2], all[i + 3]];
    const [ta, tb, tc] = [stretch(a, b), stretch(b, c), stretch(c, d)];
    for (let step = 0; step < steps; step++) {
      const t = (step / steps) * tb;
      smooth.push([between(a[0], b[0], c[0], d[0], ta, tb, tc, t), between(a[1], b[1], c[1], d[1], ta, tb, tc, t)]);
    }
  }
  return [...smooth, path[last]];
}

/** Where the path would come from: the second point mirrored in the end, bent on as from there to the third. */
function beyond(end: Point, next: Point, third: Point): Point {
  return [3 * end[0] - 3 * next[0] + third[0], 3 * end[1] - 3 * next[1] + third[1]];
}

function stretch(a: Point, b: Point): number {
  // A place beyond the end may fall on the end itself.
  return Math.sqrt(Math.hypot(b[0] - a[0], b[1] - a[1])) || 1;
}

/** One coordinate between b (t = 0) and c (t = tb): the pyramid of Barry and Goldman. */
function between(a: number, b: number, c: number, d: number, ta: number, tb: number, tc: number, t: number): number {
  const ab = b + ((b - a) * t) / ta;
  const bc = b + ((c - b) * t) / tb;
  const cd = c + ((d - c) * (t - tb)) / tc;
  const abc = ab + ((bc - ab) * (t + ta)) / (ta + tb);
  const bcd = bc + ((cd - bc) * t) / (tb + tc);
  return abc + ((bcd - abc) * t) / tb;
}

/** A place in the plane: x to the right, y up unless a function says otherwise, both in one length unit. */
export type Point = readonly [x: number, y: number];

/** Points as anyone may hand them in: `[x0, y0, x1, y1, …]`, `[[x0, y0], [x1, y1], …]` or `[{ x, y }, …]`. */
export type Points = ArrayLike<number> | ArrayLike<ArrayLike<number>> | ArrayLike<Place>;

interface Place {
  readonly x: number;
  readonly y: number;
}

/**
 * The one form inside: points one by one. A point with a coordinate that is not a finite number is missing and has
 * NaN for both.
 * @throws TypeError where a flat list has an odd number of coordinates
 * @example toPoints([0, 1, 2, 3]) // [[0, 1], [2, 3]]
 */
export function toPoints(points: Points): Point[] {
  if (points.length > 0 && typeof points[0] === 'object' && points[0] !== null)
    return Array.from(points as ArrayLike<ArrayLike<number> | Place>, (point) =>
      'x' in point ? pointOf(point.x, point.y) : pointOf(point[0], point[1]),
    );
  const flat = points as ArrayLike<number>;
  if (flat.length % 2 !== 0)
    throw new TypeError(
      `An even number of coordinates was expected, found ${flat.length}; give x and y of every point`,
    );
  return Array.from({ length: flat.length / 2 }, (_, i) => pointOf(flat[2 * i], flat[2 * i + 1]));
}

function pointOf(x: number, y: number): Point {
  return Number.isFinite(x) && Number.isFinite(y) ? [x, y] : [NaN, NaN];
}

/**
 * The points that are there, in order, and how many are not.
 * @example presentPoints([0, 1, NaN, 3]) // { points: [[0, 1]], missing: 1 }
 */
export function presentPoints(points: Points): { points: Point[]; missing: number } {
  const all = toPoints(points);
  const kept = all.filter(([x]) => !Number.isNaN(x));
  return { points: kept, missing: all.length - kept.length };
}

/**
 * The pairs of points of which both are there, in order, and how many pairs are not.
 * @throws TypeError where the two lists differ in length
 */
export function presentPairs(a: Points, b: Points): { a: Point[]; b: Point[]; missing: number } {
  const [first, second] = [toPoints(a), toPoints(b)];
  if (first.length !== second.length)
    throw new TypeError(`As many points on both sides were expected, found ${first.length} and ${second.length}`);
  const rows = first.map((_, i) => i).filter((i) => !Number.isNaN(first[i][0]) && !Number.isNaN(second[i][0]));
  return { a: rows.map((i) => first[i]), b: rows.map((i) => second[i]), missing: first.length - rows.length };
}

/**
 * The mean of some points, none missing; NaN of none.
 * @example centreOf([[0, 0], [2, 4]]) // [1, 2]
 */
export function centreOf(points: readonly Point[]): Point {
  let [sumX, sumY] = [0, 0];
  for (const [x, y] of points) {
    sumX += x;
    sumY += y;
  }
  return [sumX / points.length, sumY / points.length];
}

/** Points less a centre. */
export function about([cx, cy]: Point, points: readonly Point[]): Point[] {
  return points.map(([x, y]) => [x - cx, y - cy]);
}

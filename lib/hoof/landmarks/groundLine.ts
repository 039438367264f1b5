import { isFitFailure } from '../../geometry/fitFailure.ts';
import { intersection } from '../../geometry/intersection.ts';
import type { Line } from '../../geometry/line.ts';
import { lineByTotalLeastSquares } from '../../geometry/lineByTotalLeastSquares.ts';
import type { Point } from '../../geometry/points.ts';
import type { Figure } from './figure.ts';
import type { Located } from './located.ts';
import type { PictureView } from './placedPoint.ts';

const nowhere: Point = [Number.NaN, Number.NaN];

/** The line nearest to some points; NaN where they settle none. */
export function lineOf(points: readonly Point[]): Line {
  const fit = lineByTotalLeastSquares(points);
  return isFitFailure(fit) ? { point: nowhere, direction: nowhere } : fit;
}

/** Where the foot meets the ground in each view. */
const contacts: Readonly<Record<PictureView, readonly string[]>> = {
  side: ['toe_ground', 'heel_ground'],
  front: ['medial_ground', 'lateral_ground'],
  rear: ['medial_heel_ground', 'lateral_heel_ground'],
  below: [],
};

/** The ground of the picture: through the points placed on it, else through where the foot stands on it. */
export function groundLine(at: Located, view: PictureView): Line {
  const placed = at.many('ground');
  return lineOf(placed.length > 0 ? placed : contacts[view].map((code) => at.one(code)));
}

/** The direction away from the ground: across its line, upwards in the picture. */
export function upFrom({ direction: [x, y] }: Line): Point {
  return x < 0 ? [y, -x] : [-y, x];
}

/** A direction, turned about where it points against another. */
export function towards([x, y]: Point, way: Point): Point {
  return x * way[0] + y * way[1] < 0 ? [-x, -y] : [x, y];
}

/** The place some way off a point. */
export function away([x, y]: Point, direction: Point, by: number): Point {
  return [x + by * direction[0], y + by * direction[1]];
}

/** The vector from one point to another. */
export function between(from: Point, to: Point): Point {
  return [to[0] - from[0], to[1] - from[1]];
}

/**
 * The angle between the ground and the line nearest to some points.
 * @param points two or more along a line that rises from the ground
 * @param way roughly the direction along the ground over which the angle opens
 */
export function angleOverGround(points: readonly Point[], ground: Line, way: Point): Figure {
  const line = lineOf(points);
  const up = towards(line.direction, upFrom(ground));
  const corner = intersection(line, ground);
  const reach = Math.max(...points.map((point) => dot(between(corner, point), up)));
  const along = towards(ground.direction, way);
  return { kind: 'angle', corner, from: away(corner, along, 0.6 * reach), to: away(corner, up, reach) };
}

/**
 * The way upright from the ground to a point.
 * @param foot where the same wall stands on the ground; where it is missing the ground's own line is taken
 */
export function heightOverGround(top: Point, foot: Point, ground: Line): Figure {
  const up = upFrom(ground);
  const base = Number.isNaN(foot[0]) ? ground.point : foot;
  return { kind: 'length', from: away(top, up, -dot(between(base, top), up)), to: top };
}

function dot(a: Point, b: Point): number {
  return a[0] * b[0] + a[1] * b[1];
}

import { degree } from '../../geometry/degrees.ts';
import { isFitFailure } from '../../geometry/fitFailure.ts';
import type { Point } from '../../geometry/points.ts';
import { transformPoint, transformPoints } from '../../geometry/transformPoints.ts';
import type { ErrorParts, PictureScale } from './pictureMeasures.ts';
import { type PicturePlane, picturePlane } from './picturePlane.ts';
import type { PlacedPicture } from './placedPicture.ts';
import type { Sight } from './sight.ts';
import { landmarkView, planeDepth_mm, sharedDepths } from './views.ts';

/** One standard deviation of a placed point in each direction where a person's own is not known. An assumption. */
export const defaultPlacing_px = 4;

/** One standard error of a bar's or a board's size where not given, in mm. An assumption. */
export const defaultScaleError_mm = 0.5;

/** How far off square a camera commonly is, turned and raised each, where the picture doesn't tell. An assumption. */
export const unknownSquareness_deg = 5;

/** A picture with how it was taken and placed: all that an error is worked from. */
export interface Situation extends PlacedPicture {
  /** Where the picture tells. */
  readonly sight: Sight | undefined;
  readonly distance_mm: number;
  readonly placing_px: number;
  readonly depth: boolean;
}

/**
 * How large the error of a measure is, to first order: each thing that may be off is moved by its own standard error
 * either way, and the mean square of what the measure moves counts: in first order its slope times the standard error, and
 * still right at the least value that a measure can have, such as perfect symmetry. How square a bar's picture was has no
 * first order; there nine ways of having been off are weighed.
 * @param prepare what measures are read from, of the foot's places in the plane; done once for all measures
 * @returns a function of the measure and of the places in `codes` that it rests on
 * @source Taylor 1997, An Introduction to Error Analysis, 2nd edition, 3.11, for independent errors
 */
export function errorPartsIn<T>(
  situation: Situation,
  prepare: (points: readonly Point[]) => T,
): (value: (prepared: T) => number, used: readonly number[]) => ErrorParts {
  const { pixels, plane, placing_px, inPlane: points } = situation;
  const square = prepare(points);
  const placed = pixels.map((pixel, i) =>
    bothWays((by) => prepare(replaced(points, i, transformPoint(plane.toPlane, moved(pixel, by, placing_px))))),
  );
  const scaled = otherScales(situation).map((pair) =>
    pair.map(({ toPlane }) => prepare(transformPoints(toPlane, pixels))),
  );
  const oblique = obliqueWays(situation).map((way) => ({ weight: way.weight, seen: prepare(way.points) }));
  const deep = depthWays(situation).map(({ of, pair }) => ({ of, pair: pair.map(prepare) }));
  return (value, used) => {
    const centre = value(square);
    const squares = (pairs: readonly (readonly T[])[]) =>
      pairs.reduce((sum, [one, other]) => sum + ((value(one) - centre) ** 2 + (value(other) - centre) ** 2) / 2, 0);
    return {
      placing: Math.sqrt(squares(used.flatMap((i) => placed[i]))),
      scale: Math.sqrt(squares(scaled)),
      squareness: Math.sqrt(oblique.reduce((sum, { weight, seen }) => sum + weight * (value(seen) - centre) ** 2, 0)),
      depth: Math.sqrt(squares(deep.filter(({ of }) => of.some((i) => used.includes(i))).map(({ pair }) => pair))),
    };
  };
}

/** The whole standard error. */
export function wholeError({ placing, scale, squareness, depth }: ErrorParts): number {
  return Math.hypot(placing, scale, squareness, depth);
}

function bothWays<T>(at: (by: Point) => T): [T, T][] {
  return [
    [at([1, 0]), at([-1, 0])],
    [at([0, 1]), at([0, -1])],
  ];
}

function moved([x, y]: Point, by: Point, size: number): Point {
  return [x + size * by[0], y + size * by[1]];
}

function replaced(points: readonly Point[], place: number, point: Point): Point[] {
  return points.map((other, i) => (i === place ? point : other));
}

/** Pairs of planes: each corner of the scale moved either way, and each of its sizes larger and smaller. */
function otherScales({ scale, corners, placing_px }: Situation): PicturePlane[][] {
  if (scale === undefined) return [];
  const error = scale.error_mm ?? defaultScaleError_mm;
  const pairs = corners.flatMap((corner, i) =>
    bothWays((by) => picturePlane(scale, replaced(corners, i, moved(corner, by, placing_px)))),
  );
  const sizes: readonly (readonly PictureScale[])[] =
    scale.kind === 'bar'
      ? [[1, -1].map((sign) => ({ ...scale, length_mm: scale.length_mm + sign * error }))]
      : [
          [1, -1].map((sign) => ({ ...scale, width_mm: scale.width_mm + sign * error })),
          [1, -1].map((sign) => ({ ...scale, height_mm: scale.height_mm + sign * error })),
        ];
  const all = [...pairs, ...sizes.map((pair) => pair.map((size) => picturePlane(size, corners)))];
  return all.filter((pair): pair is PicturePlane[] => !pair.some(isFitFailure));
}

/** Where the points were if the camera was turned and raised so or so, with weights that add up to 1. */
function obliqueWays({
  plane,
  corners,
  inPlane: points,
}: Situation): { readonly points: readonly Point[]; readonly weight: number }[] {
  if (plane.known === 'shape') return [];
  // Nodes and weights of Gauss and Hermite: exact for polynomials of a normal variable up to the fifth power.
  const nodes = [-Math.sqrt(3), 0, Math.sqrt(3)].map((node) => node * unknownSquareness_deg * degree);
  const weights = [1 / 6, 2 / 3, 1 / 6];
  const bar = corners.map((corner) => transformPoint(plane.toPlane, corner));
  return nodes.flatMap((turned, i) =>
    nodes.map((raised, j) => {
      const square = ([u, v]: Point): Point => {
        const x = u / Math.cos(turned);
        return [x, (v - x * Math.sin(turned) * Math.sin(raised)) / Math.cos(raised)];
      };
      const size = bar.length === 2 ? length(bar) / length(bar.map(square)) : 1;
      const seen = points.map(square).map(([x, y]): Point => [size * x, size * y]);
      return { points: seen, weight: weights[i] * weights[j] };
    }),
  );
}

function length([from, to]: readonly Point[]): number {
  return Math.hypot(to[0] - from[0], to[1] - from[1]);
}

/** Pairs of point lists: what may lie off the plane moved nearer and further, alone or with what it moves with. */
function depthWays({
  view,
  codes,
  plane,
  inPlane: points,
  sight,
  distance_mm,
  depth,
}: Situation): { readonly of: readonly number[]; readonly pair: readonly (readonly Point[])[] }[] {
  if (!depth || plane.known === 'nothing') return [];
  const { landmarks } = landmarkView(view);
  const places = codes.map((_, i) => i);
  const sources = [
    ...places.map((i) => ({ of: [i], by: landmarks.find(({ code }) => code === codes[i])?.depth_mm ?? 0 })),
    ...sharedDepths
      .filter((shared) => shared.view === view)
      .map((shared) => ({ of: places.filter((i) => shared.codes.includes(codes[i])), by: shared.depth_mm })),
    { of: places, by: planeDepth_mm },
  ];
  const middle = middleOf(points);
  const unknown = Math.tan(unknownSquareness_deg * degree);
  // How much the line of sight leans, across and up, and how much larger what is nearer is seen; the one is known and both
  // go together, or each may be.
  const leans: readonly (readonly [number, number, number])[] =
    sight === undefined
      ? [
          [unknown, 0, 0],
          [0, unknown, 0],
          [0, 0, 1 / distance_mm],
        ]
      : [[...sight.slope, 1 / sight.distance_mm]];
  return sources.flatMap(({ of, by }) =>
    leans.map(([across, up, grown]) => {
      const nearer = (sign: number) =>
        points.map(([x, y], i): Point => {
          if (!of.includes(i)) return [x, y];
          const far = sign * by;
          return [x + far * (across + (x - middle[0]) * grown), y + far * (up + (y - middle[1]) * grown)];
        });
      return { of, pair: [nearer(1), nearer(-1)] };
    }),
  );
}

/** The middle of some points; the origin where there are none. */
export function middleOf(points: readonly Point[]): Point {
  const n = Math.max(1, points.length);
  return [points.reduce((sum, [x]) => sum + x, 0) / n, points.reduce((sum, [, y]) => sum + y, 0) / n];
}

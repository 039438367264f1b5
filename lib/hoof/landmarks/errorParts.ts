import type { Point } from '../../geometry/points.ts';
import { transformPoint, transformPoints } from '../../geometry/transformPoints.ts';
import { depthWays } from './depthWays.ts';
import { obliqueWays } from './obliqueWays.ts';
import { bothWays, moved, otherScales, replaced } from './otherScales.ts';
import type { ErrorParts } from './pictureMeasures.ts';
import type { Situation } from './situation.ts';

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
  const planes = otherScales(situation);
  const scaled = planes.map((pair) => pair.map(({ toPlane }) => prepare(transformPoints(toPlane, pixels))));
  const oblique = obliqueWays(situation).map((way) => ({ weight: way.weight, seen: prepare(way.points) }));
  const deep = depthWays(situation, planes).map(({ of, pair }) => ({ of, pair: pair.map(prepare) }));
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

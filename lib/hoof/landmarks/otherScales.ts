import { isFitFailure } from '../../geometry/fitFailure.ts';
import type { Point } from '../../geometry/points.ts';
import type { PictureScale } from './pictureMeasures.ts';
import { type PicturePlane, picturePlane } from './picturePlane.ts';
import { defaultScaleError_mm, type Situation } from './situation.ts';

/** Pairs of planes: each corner of the scale moved either way, and each of its sizes larger and smaller. */
export function otherScales({ scale, corners, scalePlacing_px }: Situation): PicturePlane[][] {
  if (scale === undefined) return [];
  const error = scale.error_mm ?? defaultScaleError_mm;
  const pairs = corners.flatMap((corner, i) =>
    bothWays((by) => picturePlane(scale, replaced(corners, i, moved(corner, by, scalePlacing_px)))),
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

/** What comes of a step to the right or left, and of one down or up. */
export function bothWays<T>(at: (by: Point) => T): [T, T][] {
  return [
    [at([1, 0]), at([-1, 0])],
    [at([0, 1]), at([0, -1])],
  ];
}

/** A point moved by some pixels. */
export function moved([x, y]: Point, by: Point, size: number): Point {
  return [x + size * by[0], y + size * by[1]];
}

/** Points with another in one place. */
export function replaced(points: readonly Point[], place: number, point: Point): Point[] {
  return points.map((other, i) => (i === place ? point : other));
}

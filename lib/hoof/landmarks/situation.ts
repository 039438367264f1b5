import type { Point } from '../../geometry/points.ts';
import type { PictureOptions } from './pictureMeasures.ts';
import type { PlacedPicture } from './placedPicture.ts';
import type { Sight } from './sight.ts';

/** One standard deviation of a placed point in each direction where a person's own is not known. An assumption. */
export const defaultPlacing_px = 3;

/** The same for the scale's own points, which are sharp. An assumption. */
export const defaultScalePlacing_px = 1.5;

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
  readonly scalePlacing_px: number;
  readonly depth: boolean;
  readonly camera: PictureOptions['camera'];
}

/** The middle of some points; the origin where there are none. */
export function middleOf(points: readonly Point[]): Point {
  const n = Math.max(1, points.length);
  return [points.reduce((sum, [x]) => sum + x, 0) / n, points.reduce((sum, [, y]) => sum + y, 0) / n];
}

import type { Limb } from '../limbs.ts';
import type { PictureMeasures, PictureOptions, PictureScale } from './pictureMeasures.ts';
import type { PictureView, PlacedPoint } from './placedPoint.ts';

/**
 * What the points placed on one picture say of the foot.
 * @param view     from where the foot is seen
 * @param points   rows of one picture; rows of another view are left out, those without a number in a coordinate too
 * @param scale    what in the picture has a known size; without one only angles are measured
 * @param limb     tells inside from outside
 * @returns measures with one standard error each, what was refused and why, and what to draw
 */
export function measuresFromPoints(
  view: PictureView,
  points: readonly PlacedPoint[],
  scale: PictureScale | undefined,
  limb: Limb,
  options: PictureOptions = {},
): PictureMeasures {
  void [view, points, scale, limb, options];
  return { measures: [], squareness: undefined, refusals: [], drawing: [], assumptions: [] };
}

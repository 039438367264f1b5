import { isFitFailure } from '../../geometry/fitFailure.ts';
import type { Point } from '../../geometry/points.ts';
import { transformPoints } from '../../geometry/transformPoints.ts';
import { say } from '../../words/say.ts';
import { isThere } from './located.ts';
import type { PictureScale } from './pictureMeasures.ts';
import { type PicturePlane, picturePlane, scaleCodes, unscaledPlane } from './picturePlane.ts';
import type { PictureView, PlacedPoint } from './placedPoint.ts';
import { landmarkView, scaleLandmarks } from './views.ts';

/** The points of one picture with the plane in which its scale lies. */
export interface PlacedPicture {
  readonly view: PictureView;
  /** Codes and places of the foot's points: in pixels, and in the plane, y up. */
  readonly codes: readonly string[];
  readonly pixels: readonly Point[];
  readonly inPlane: readonly Point[];
  /** The scale with its points in pixels; where it can't be used, as if there were none, and why. */
  readonly scale: PictureScale | undefined;
  readonly corners: readonly Point[];
  readonly fault: string | undefined;
  readonly plane: PicturePlane;
}

/** The points of one view, known codes only, in the plane of their scale. */
export function placedPicture(
  view: PictureView,
  points: readonly PlacedPoint[],
  scale: PictureScale | undefined,
): PlacedPicture {
  const known = new Set(landmarkView(view).landmarks.map(({ code }) => code));
  const own = points.filter((row) => row.view === view && Number.isFinite(row.x_px) && Number.isFinite(row.y_px));
  const foot = own.filter(({ point }) => known.has(point));
  const codes = foot.map(({ point }) => point);
  const pixels = foot.map(({ x_px, y_px }): Point => [x_px, y_px]);
  const corners = scaleCodes(scale).map((code): Point => {
    const row = own.find(({ point }) => point === code);
    return row ? [row.x_px, row.y_px] : [Number.NaN, Number.NaN];
  });
  const found = planeOf(scale, corners);
  const [plane, fault] = typeof found === 'string' ? [unscaledPlane, found] : [found, undefined];
  const sized = fault === undefined ? { scale, corners } : { scale: undefined, corners: [] };
  return { view, codes, pixels, inPlane: transformPoints(plane.toPlane, pixels), ...sized, fault, plane };
}

const scaleNames = { bar: say`measuring bar`, board: say`board` } as const;

/** The plane, or why there is none. */
function planeOf(scale: PictureScale | undefined, corners: readonly Point[]): PicturePlane | string {
  if (scale === undefined) return unscaledPlane;
  const missing = corners.findIndex((corner) => !isThere(corner));
  if (missing >= 0)
    return say`${scaleLandmarks[scale.kind][missing].title} of the ${scaleNames[scale.kind]} is not placed`;
  const found = picturePlane(scale, corners);
  return isFitFailure(found) ? say`The ${scaleNames[scale.kind]} can't be used: ${found.failure}` : found;
}

import { type FitFailure, isFitFailure } from '../../geometry/fitFailure.ts';
import { fitProjective } from '../../geometry/fitProjective.ts';
import { inverse, type Matrix } from '../../geometry/matrix.ts';
import type { Point } from '../../geometry/points.ts';
import { say } from '../../words/say.ts';
import type { PictureScale } from './pictureMeasures.ts';
import { scaleLandmarks } from './views.ts';

/** The plane of the foot, y up. */
export interface PicturePlane {
  /** From pixels to mm, and back. Without a scale the plane is the picture itself, in pixels. */
  readonly toPlane: Matrix;
  readonly toPicture: Matrix;
  /** Whether the picture was made square by it, or at least sized. */
  readonly known: 'shape' | 'size' | 'nothing';
}

/** The codes of a scale's points, in the order in which `picturePlane` expects them. */
export function scaleCodes(scale: PictureScale | undefined): readonly string[] {
  return scale === undefined ? [] : scaleLandmarks[scale.kind].map(({ code }) => code);
}

/**
 * The plane in which the scale lies.
 * @param corners the scale's points in pixels, in the order of `scaleLandmarks`
 * @returns the plane, or a `FitFailure` where the points don't settle it
 */
export function picturePlane(scale: PictureScale, corners: readonly Point[]): PicturePlane | FitFailure {
  if (scale.kind === 'bar') {
    const [[x0, y0], [x1, y1]] = corners;
    const length_px = Math.hypot(x1 - x0, y1 - y0);
    if (!(length_px > 0))
      return { failure: say`The two ends of the bar lie on one another; place them apart`, n: 2, missing: 0 };
    return sized(scale.length_mm / length_px, 'size');
  }
  const { width_mm: width, height_mm: height } = scale;
  const fit = fitProjective(corners, [0, 0, width, 0, width, height, 0, height]);
  if (isFitFailure(fit)) return fit;
  return { toPlane: fit.matrix, toPicture: inverse(fit.matrix), known: 'shape' };
}

/** The picture with so many mm to a pixel. */
function sized(scale: number, known: 'size' | 'nothing'): PicturePlane {
  const map = (by: number): Matrix => [
    [by, 0, 0],
    [0, -by, 0],
    [0, 0, 1],
  ];
  return { toPlane: map(scale), toPicture: map(1 / scale), known };
}

/** The picture as its own plane, in pixels, y up: where nothing in it has a known size. */
export const unscaledPlane: PicturePlane = sized(1, 'nothing');

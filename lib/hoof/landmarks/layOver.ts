import { type FitFailure, isFitFailure } from '../../geometry/fitFailure.ts';
import { fitSimilarity, type Similarity } from '../../geometry/fitSimilarity.ts';
import { lineThrough } from '../../geometry/line.ts';
import { centreOf, type Point } from '../../geometry/points.ts';
import { transformPoints } from '../../geometry/transformPoints.ts';
import { say } from '../../words/say.ts';
import { away, groundLine, towards } from './groundLine.ts';
import { isThere, type Located, located } from './located.ts';
import type { PictureScale } from './pictureMeasures.ts';
import { type PlacedPicture, placedPicture } from './placedPicture.ts';
import type { PictureView, PlacedPoint } from './placedPoint.ts';

/** One of two pictures of a foot in one view. */
export interface PictureToLay {
  readonly points: readonly PlacedPoint[];
  readonly scale: PictureScale | undefined;
}

/** What the two are held together by: the middle of these points, as far as they are placed on both. */
const anchors: Readonly<Record<PictureView, readonly string[]>> = {
  side: ['toe_ground', 'heel_ground'],
  front: ['medial_ground', 'lateral_ground'],
  rear: ['medial_heel_ground', 'lateral_heel_ground'],
  below: ['medial_heel', 'lateral_heel'],
};

/**
 * Lays one picture of a foot over another of the same foot and view, before and after or last time and now: at one
 * scale, turned to one ground line, held together where the foot stands. From below the line of the heels is taken.
 * @param under the picture that stays as it is
 * @param over the picture that is moved, turned and sized
 * @returns the similarity that takes pixels of `over` to pixels of `under`, or a `FitFailure` where one has no known size,
 *   no ground line, or no point in common with the other
 */
export function layOver(view: PictureView, under: PictureToLay, over: PictureToLay): Similarity | FitFailure {
  const pictures = [over, under].map(({ points, scale }) => placedPicture(view, points, scale));
  const n = Math.min(...pictures.map(({ codes }) => codes.length));
  const fail = (failure: string): FitFailure => ({ failure, n, missing: 0 });
  if (pictures.some(({ plane }) => plane.known === 'nothing'))
    return fail(say`A known size was expected in both pictures; place the points of a bar or a board in each`);
  const common = anchors[view].filter((code) => pictures.every(({ codes }) => codes.includes(code)));
  if (common.length === 0)
    return fail(say`A place where the foot stands was expected in both pictures; place the same one on each`);
  const steps = pictures.map((picture) => stepOf(picture, common));
  if (!steps.flat().every(isThere))
    return fail(say`A ground line was expected in both pictures; place two points on the ground of each`);
  const fit = fitSimilarity(steps[0], steps[1]);
  return isFitFailure(fit) ? fail(fit.failure) : fit;
}

/** In pixels: where the picture is held, and where ten centimetres along its ground line from there lead. */
function stepOf({ view, codes, inPlane, plane }: PlacedPicture, common: readonly string[]): Point[] {
  const at = located(codes, inPlane);
  const held = centreOf(common.map((code) => at.one(code)));
  return transformPoints(plane.toPicture, [held, away(held, rightwards(view, at), 100)]);
}

/** The ground's direction to the right of the picture; from below from the inside heel to the outside one. */
function rightwards(view: PictureView, at: Located): Point {
  if (view === 'below') return lineThrough(at.one('medial_heel'), at.one('lateral_heel')).direction;
  return towards(groundLine(at, view).direction, [1, 0]);
}

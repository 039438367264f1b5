import type { Points } from './points.ts';
import { polygonMoments } from './polygonMoments.ts';

/**
 * The area that a closed outline goes round, whichever way it is walked.
 * @param points the corners in order, in any one length unit, the first not repeated; a missing one is left out
 * @returns the area in the squared unit, 0 or more; NaN of no corner at all
 * @source The shoelace formula, Meister 1769
 * @example polygonArea([1, 6, 3, 1, 7, 2, 4, 4, 8, 5]) // 16.5
 */
export function polygonArea(points: Points): number {
  return Math.abs(signedArea(points));
}

/**
 * The same with a sign: positive where the corners go round counter-clockwise with y up, negative where clockwise.
 * @example signedArea([0, 0, 0, 1, 1, 1, 1, 0]) // -1
 */
export function signedArea(points: Points): number {
  const { corners, area } = polygonMoments(points);
  return corners.length === 0 ? NaN : area;
}

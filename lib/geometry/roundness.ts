import type { Points } from './points.ts';
import { polygonArea } from './polygonArea.ts';
import { polygonPerimeter } from './polygonPerimeter.ts';

/**
 * How near an outline is to a circle: 4π times its area over the square of its length.
 * @param points the corners in order, in any one length unit; a missing one is left out
 * @returns 0 for an outline without area to 1 for a circle; NaN of no corner at all
 * @source The isoperimetric quotient; Cox 1927, Journal of Paleontology 1:179–183
 * @example roundness([0, 0, 1, 0, 1, 1, 0, 1]) // 0.7853981633974483
 */
export function roundness(points: Points): number {
  return (4 * Math.PI * polygonArea(points)) / polygonPerimeter(points) ** 2;
}

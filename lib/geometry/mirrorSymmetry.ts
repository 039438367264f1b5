import { degree } from './degrees.ts';
import { type FitFailure, isFitFailure } from './fitFailure.ts';
import { fitSimilarity } from './fitSimilarity.ts';
import type { Line } from './line.ts';
import { about, centreOf, type Point, type Points, toPoints } from './points.ts';
import { transformPoint } from './transformPoints.ts';

export interface MirrorSymmetry {
  /** The line of best symmetry, through the centre of the landmarks. */
  readonly axis: Line;
  /** The landmarks as they would be if both sides were the mean of both; NaN for a missing one. */
  readonly symmetric: readonly Point[];
  /** The root mean square distance of the landmarks from `symmetric`, in their unit. */
  readonly rmsd: number;
  /** The squared distances as a share of the landmarks' squared extent, 0 for perfect symmetry, to 1. */
  readonly asymmetry: number;
  readonly n: number;
  readonly missing: number;
}

/**
 * How far the two sides of a shape are mirror images of each other: the shape is laid over its own mirror image, left
 * landmarks on right ones.
 * @param points landmarks in any one length unit
 * @param partners for each landmark the place in the list of its partner on the other side, its own place where it lies
 *   on the middle line; a pair with either missing is left out and counted
 * @returns the axis and what is left between the sides, or a `FitFailure` with the reason
 * @throws TypeError where `partners` doesn't lead back
 * @source Mardia, Bookstein & Moreton 2000, Biometrika 87:285–300
 * @example mirrorSymmetry([-1, 0, 1, 0, 0, 3], [1, 0, 2]).asymmetry // 0
 */
export function mirrorSymmetry(points: Points, partners: ArrayLike<number>): MirrorSymmetry | FitFailure {
  const all = toPoints(points);
  const swapped = all.map((_, i) => {
    const partner = partners[i];
    if (partners[partner] !== i)
      throw new TypeError(`Partners that lead back to each other were expected; ${i} leads to ${partner}`);
    return all[partner];
  });
  const mirrored = swapped.map(([x, y]): Point => [x, -y]);
  const fit = fitSimilarity(mirrored, all, { scale: false });
  if (isFitFailure(fit)) return fit;
  const image = mirrored.map((point) => transformPoint(fit.matrix, point));
  const symmetric = all.map(([x, y], i): Point => [(x + image[i][0]) / 2, (y + image[i][1]) / 2]);
  const kept = all.map((_, i) => i).filter((i) => !Number.isNaN(symmetric[i][0]));
  const centre = centreOf(kept.map((i) => all[i]));
  const extent = about(
    centre,
    kept.map((i) => all[i]),
  ).reduce((sum, [x, y]) => sum + x * x + y * y, 0);
  const squares = kept.reduce((sum, i) => {
    const [dx, dy] = [all[i][0] - symmetric[i][0], all[i][1] - symmetric[i][1]];
    return sum + dx * dx + dy * dy;
  }, 0);
  // Mirroring in the x axis and turning by t is mirroring in the line at t / 2.
  const half = (fit.turn * degree) / 2;
  return {
    axis: { point: centre, direction: [Math.cos(half), Math.sin(half)] },
    symmetric,
    rmsd: Math.sqrt(squares / kept.length),
    asymmetry: squares / extent,
    n: fit.n,
    missing: fit.missing,
  };
}

/**
 * Points mirrored so that left and right change places: x turns its sign.
 * @example mirrored([1, 2]) // [[-1, 2]]
 */
export function mirrored(points: Points): Point[] {
  return toPoints(points).map(([x, y]) => [-x, y]);
}

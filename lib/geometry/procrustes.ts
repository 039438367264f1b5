import { type FitFailure, isFitFailure } from './fitFailure.ts';
import { fitSimilarity, type Similarity, type SimilarityOptions } from './fitSimilarity.ts';
import { centreOf, type Point, type Points, presentPairs } from './points.ts';
import { transformPoint, transformPoints } from './transformPoints.ts';

export interface Procrustes extends Similarity {
  /** For points as rows: moved = scale · moving · rotation + translation. */
  readonly rotation: readonly [readonly [number, number], readonly [number, number]];
  /** All moving points where the fit takes them, in the unit of the target; NaN for a missing one. */
  readonly moved: readonly Point[];
  /** The squared distances between target and moved points, added up, and their root mean square. */
  readonly sumOfSquares: number;
  readonly rmsd: number;
  /** The same as a share of the target's own squared extent, 0 to 1: the squared full Procrustes distance. */
  readonly disparity: number;
  /** The Riemannian distance between the two shapes, in radians from 0 to π/2. */
  readonly distance: number;
}

/**
 * Lays one set of landmarks over another: moved, turned and scaled until the squared distances are least. No mirror
 * image unless asked for.
 * @param target two or more landmarks in any one length unit
 * @param moving the same landmarks of the other shape, in any one length unit; a pair with either missing is left out of
 *   the fit and counted
 * @param options `scale: false` keeps the size, `reflect: true` allows a mirror image
 * @returns the fit and what is left between the shapes, or a `FitFailure` with the reason
 * @source Dryden & Mardia 2016, Statistical Shape Analysis, 2nd edition, 4.2 and 7.2
 * @example procrustes([0, 0, 2, 0, 2, 1], [5, 5, 5, 9, 3, 9]).scale // 0.5
 */
export function procrustes(target: Points, moving: Points, options: SimilarityOptions = {}): Procrustes | FitFailure {
  const fit = fitSimilarity(moving, target, options);
  if (isFitFailure(fit)) return fit;
  const { a: kept, b: shape } = presentPairs(target, moving);
  const sumOfSquares = kept.reduce((sum, [x, y], i) => {
    const [u, v] = transformPoint(fit.matrix, shape[i]);
    return sum + (x - u) ** 2 + (y - v) ** 2;
  }, 0);
  const centre = centreOf(kept);
  const extent = kept.reduce((sum, [x, y]) => sum + (x - centre[0]) ** 2 + (y - centre[1]) ** 2, 0);
  // The distance between shapes is that at the best size, whether or not the size may change here.
  const disparity =
    options.scale === false
      ? (procrustes(kept, shape, { ...options, scale: true }) as Procrustes).disparity
      : sumOfSquares / extent;
  const [[a, b], [c, d]] = fit.matrix;
  return {
    ...fit,
    rotation: [
      [a / fit.scale, c / fit.scale],
      [b / fit.scale, d / fit.scale],
    ],
    moved: transformPoints(fit.matrix, moving),
    sumOfSquares,
    rmsd: Math.sqrt(sumOfSquares / kept.length),
    disparity,
    distance: Math.asin(Math.min(1, Math.sqrt(disparity))),
  };
}

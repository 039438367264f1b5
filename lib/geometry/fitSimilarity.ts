import { degree } from './degrees.ts';
import { type FitFailure, tooFew } from './fitFailure.ts';
import type { Matrix } from './matrix.ts';
import { about, centreOf, type Points, presentPairs } from './points.ts';

export interface Similarity {
  readonly scale: number;
  /** Degrees in (−180, 180], counter-clockwise with y up; after the mirror where there is one. */
  readonly turn: number;
  /** Whether the x axis was mirrored in itself first, so that left and right changed places. */
  readonly mirrored: boolean;
  /** What is added last, in the unit of `to`. */
  readonly translation: readonly [number, number];
  /** The whole as a matrix, for `transformPoints`. */
  readonly matrix: Matrix;
  readonly n: number;
  readonly missing: number;
}

export interface SimilarityOptions {
  /** Whether the size may change, true where not given. */
  readonly scale?: boolean;
  /** Whether a mirror image may be taken where it fits better, false where not given. */
  readonly reflect?: boolean;
}

/**
 * The turn, size and place that bring points nearest to others, by least squares.
 * @param from two or more points, not all in one place, in any one length unit
 * @param to the points they should fall on, as many, in any one length unit; a pair with either missing is left out and
 *   counted
 * @returns the similarity, or a `FitFailure` with the reason
 * @source Umeyama 1991, IEEE Transactions on Pattern Analysis and Machine Intelligence 13:376–380; in the plane, with
 *   points as complex numbers, it is one division
 * @example fitSimilarity([0, 0, 1, 0], [2, 2, 2, 4]).scale // 2
 */
export function fitSimilarity(
  from: Points,
  to: Points,
  { scale: scaled = true, reflect = false }: SimilarityOptions = {},
): Similarity | FitFailure {
  const { a, b, missing } = presentPairs(from, to);
  const n = a.length;
  if (n < 2) return tooFew(n, 2, missing);
  const [fromCentre, toCentre] = [centreOf(a), centreOf(b)];
  const target = about(toCentre, b);
  let size = 0;
  // Σ conj(from)·to, and the same for the mirror image.
  let [plainX, plainY, mirrorX, mirrorY] = [0, 0, 0, 0];
  about(fromCentre, a).forEach(([x, y], i) => {
    const [u, v] = target[i];
    size += x * x + y * y;
    plainX += x * u + y * v;
    plainY += x * v - y * u;
    mirrorX += x * u - y * v;
    mirrorY += x * v + y * u;
  });
  const mirrored = reflect && Math.hypot(mirrorX, mirrorY) > Math.hypot(plainX, plainY);
  const [along, across] = mirrored ? [mirrorX, mirrorY] : [plainX, plainY];
  const length = Math.hypot(along, across);
  if (!(size > 0 && length > 0))
    return { failure: 'The points have no extent to be matched; place some further apart', n, missing };
  const scale = scaled ? length / size : 1;
  const [cos, sin] = [(scale * along) / length, (scale * across) / length];
  const flip = mirrored ? -1 : 1;
  const translation = [
    toCentre[0] - cos * fromCentre[0] + flip * sin * fromCentre[1],
    toCentre[1] - sin * fromCentre[0] - flip * cos * fromCentre[1],
  ] as const;
  return {
    scale,
    turn: Math.atan2(across, along) / degree,
    mirrored,
    translation,
    matrix: [
      [cos, -flip * sin, translation[0]],
      [sin, flip * cos, translation[1]],
      [0, 0, 1],
    ],
    n,
    missing,
  };
}

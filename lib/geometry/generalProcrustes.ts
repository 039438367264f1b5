import { type FitFailure, isFitFailure, tooFew } from './fitFailure.ts';
import { about, centreOf, type Point, type Points, toPoints } from './points.ts';
import { type Procrustes, procrustes } from './procrustes.ts';

export interface GeneralProcrustes {
  /** The mean shape about its centre, turned like the first shape, of mean size; NaN for a landmark that was left out. */
  readonly mean: readonly Point[];
  /** The Riemannian distance of each shape from the mean, in radians. */
  readonly distances: readonly number[];
  /** Their root mean square. */
  readonly rms: number;
  /** The root of each shape's summed squared distances from its own centre, in its unit. */
  readonly centroidSizes: readonly number[];
  /** How many landmarks every shape has, and how many were left out because some shape lacks them. */
  readonly n: number;
  readonly missing: number;
}

/**
 * The mean of several shapes: all laid over their mean at once, without mirror images.
 * @param shapes two or more, each the same landmarks in the same order, in any one length unit
 * @returns the mean shape and how far each is from it, or a `FitFailure` with the reason
 * @throws TypeError where the shapes differ in their number of landmarks
 * @source Kent 1994, Journal of the Royal Statistical Society B 56:285–299: the mean is the first principal axis of the
 *   shapes as complex vectors, here by power iteration
 * @example generalProcrustes([[0, 0, 2, 0, 1, 1], [0, 0, 0, 4, -2, 2]]).rms // 0
 */
export function generalProcrustes(shapes: readonly Points[]): GeneralProcrustes | FitFailure {
  const all = shapes.map(toPoints);
  const landmarks = all.length === 0 ? 0 : all[0].length;
  for (const shape of all)
    if (shape.length !== landmarks)
      throw new TypeError(`Shapes of ${landmarks} landmarks were expected, found one of ${shape.length}`);
  const kept = Array.from({ length: landmarks }, (_, i) => i).filter((i) => all.every((s) => !Number.isNaN(s[i][0])));
  const missing = landmarks - kept.length;
  if (kept.length < 2) return tooFew(kept.length, 2, missing);
  const centred = all.map((shape) => {
    const points = kept.map((i) => shape[i]);
    return about(centreOf(points), points);
  });
  const centroidSizes = centred.map(sizeOf);
  if (!centroidSizes.every((size) => size > 0))
    return { failure: 'A shape has all its landmarks in one place; place them apart', n: kept.length, missing };
  const unit = centred.map((shape, i) => scaled(shape, 1 / centroidSizes[i]));

  let mean = unit[0];
  for (let turn = 0; turn < 1000; turn++) {
    const next = principal(unit, mean);
    const change = sizeOf(next.map(([x, y], i) => [x - mean[i][0], y - mean[i][1]]));
    mean = next;
    if (change < 1e-14) break;
  }
  const onFirst = procrustes(unit[0], mean);
  const distances = unit.map((shape) => (procrustes(mean, shape) as Procrustes).distance);
  const size = centroidSizes.reduce((sum, each) => sum + each, 0) / shapes.length;
  const turned = isFitFailure(onFirst) ? mean : onFirst.moved;
  const sized = scaled(turned, size / sizeOf(turned));
  return {
    mean: Array.from({ length: landmarks }, (_, i) => (kept.includes(i) ? sized[kept.indexOf(i)] : [NaN, NaN])),
    distances,
    rms: Math.sqrt(distances.reduce((sum, distance) => sum + distance ** 2, 0) / distances.length),
    centroidSizes,
    n: kept.length,
    missing,
  };
}

/** Every shape turned and scaled onto the mean and added up, at size 1: one step of the power iteration. */
function principal(shapes: readonly (readonly Point[])[], mean: readonly Point[]): Point[] {
  const sum = mean.map(() => [0, 0]);
  for (const shape of shapes) {
    let [along, across] = [0, 0];
    shape.forEach(([x, y], i) => {
      along += x * mean[i][0] + y * mean[i][1];
      across += x * mean[i][1] - y * mean[i][0];
    });
    shape.forEach(([x, y], i) => {
      sum[i][0] += along * x - across * y;
      sum[i][1] += across * x + along * y;
    });
  }
  const points = sum.map(([x, y]) => [x, y] as const);
  return scaled(points, 1 / sizeOf(points));
}

function sizeOf(points: readonly Point[]): number {
  return Math.sqrt(points.reduce((sum, [x, y]) => sum + x * x + y * y, 0));
}

function scaled(points: readonly Point[], factor: number): Point[] {
  return points.map(([x, y]) => [x * factor, y * factor]);
}

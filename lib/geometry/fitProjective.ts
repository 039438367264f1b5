import { type FitFailure, tooFew } from './fitFailure.ts';
import { inverse, type Matrix, product, rows } from './matrix.ts';
import { about, centreOf, type Point, type Points, presentPairs, toPoints } from './points.ts';
import { type Equation, solveNormal, solvePositive } from './solveNormal.ts';
import { transformPoint } from './transformPoints.ts';

export interface Projective {
  /** Takes (x, y, 1) of `from` to `to`, with 1 at its lower right unless that is nearly 0. */
  readonly matrix: Matrix;
  /** How far from its place each point falls, in the unit of `to`; NaN for a missing pair. */
  readonly residuals: readonly number[];
  readonly rmsd: number;
  /** The standard error of one coordinate in `to`, from the residuals; NaN of four pairs. */
  readonly residualSd: number;
  readonly n: number;
  readonly missing: number;
}

/**
 * The projective map of one plane onto another, as a camera makes it: by the normalised direct linear transform, then
 * refined until the squared distances in `to` are least.
 * @param from four or more points, no three of four on one line, in any one length unit
 * @param to where they fall, as many, in any one length unit; a pair with either missing is left out and counted
 * @returns the map and its residuals, or a `FitFailure` with the reason
 * @source Hartley & Zisserman 2004, Multiple View Geometry in Computer Vision, 2nd edition, algorithms 4.2 and 4.3
 * @example fitProjective([0, 0, 1, 0, 1, 1, 0, 1], [0, 0, 2, 0, 2, 2, 0, 2]).matrix // [[2, 0, 0], [0, 2, 0], [0, 0, 1]]
 */
export function fitProjective(from: Points, to: Points): Projective | FitFailure {
  const { a, b, missing } = presentPairs(from, to);
  const n = a.length;
  if (n < 4) return tooFew(n, 4, missing);
  const [ofFrom, ofTo] = [normalisation(a), normalisation(b)];
  const [source, target] = [a.map((p) => transformPoint(ofFrom, p)), b.map((p) => transformPoint(ofTo, p))];
  const start = directTransform(source, target);
  const fit = start && refined(start, source, target);
  if (!fit) {
    const failure = 'The points settle no projective map; place four of which no three lie on one line';
    return { failure, n, missing };
  }
  const whole = product(product(inverse(ofTo), asMatrix(fit)), ofFrom);
  const corner = whole[2][2];
  const size = Math.hypot(...whole.flat());
  const matrix = rows((r, c) => whole[r][c] / (Math.abs(corner) > 1e-12 * size ? corner : size));
  const [all, goal] = [toPoints(from), toPoints(to)];
  const residuals = all.map((point, i) => {
    const [x, y] = transformPoint(matrix, point);
    return Math.hypot(x - goal[i][0], y - goal[i][1]);
  });
  const squares = residuals.reduce((sum, away) => sum + (Number.isNaN(away) ? 0 : away * away), 0);
  return {
    matrix,
    residuals,
    rmsd: Math.sqrt(squares / n),
    residualSd: n > 4 ? Math.sqrt(squares / (2 * n - 8)) : NaN,
    n,
    missing,
  };
}

/** Brings points about their centre to a mean distance of √2, so that all nine numbers are of about the same size. */
function normalisation(points: readonly Point[]): Matrix {
  const [x, y] = centreOf(points);
  const far = about([x, y], points).reduce((sum, [dx, dy]) => sum + Math.hypot(dx, dy), 0) / points.length;
  const scale = Math.SQRT2 / far;
  return [
    [scale, 0, -scale * x],
    [0, scale, -scale * y],
    [0, 0, 1],
  ];
}

/** The nine numbers with the least algebraic error: the last axis of AᵀA, by inverse iteration. */
function directTransform(source: readonly Point[], target: readonly Point[]): number[] | undefined {
  const cross = Array.from({ length: 9 }, () => new Array<number>(9).fill(0));
  let trace = 0;
  source.forEach(([x, y], i) => {
    const [u, v] = target[i];
    for (const row of [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, -v],
    ])
      for (let r = 0; r < 9; r++) {
        trace += row[r] * row[r];
        for (let c = 0; c <= r; c++) cross[r][c] += row[r] * row[c];
      }
  });
  // A small shift keeps the matrix positive where the fit is exact.
  for (let r = 0; r < 9; r++) cross[r][r] += 1e-10 * trace;
  let h = unit([9, 8, 7, 6, 5, 4, 3, 2, 1]);
  // Three turns are near enough to refine from.
  for (let turn = 0; turn < 3; turn++) {
    const next = solvePositive(
      cross.map((row) => [...row]),
      [...h],
    );
    if (!next) return undefined;
    h = unit(next);
  }
  return h;
}

/** Damped Gauss–Newton steps on the distances; undefined where the points leave the map open. */
function refined(start: number[], source: readonly Point[], target: readonly Point[]): number[] | undefined {
  let h = start;
  let squares = sumOfSquares(h, source, target);
  if (!solveNormal(equations(h, source, target))) return undefined;
  for (let turn = 0, damping = 1e-6; turn < 200 && damping < 1e9; turn++) {
    const step = solveNormal(equations(h, source, target), damping);
    if (!step) return undefined;
    const moved = unit(h.map((value, i) => value + step[i]));
    const after = sumOfSquares(moved, source, target);
    const size = Math.hypot(...step);
    // So near to the end rounding decides whether the sum falls, and the steps only get smaller.
    if (after > squares && size > 1e-9) {
      damping *= 10;
      continue;
    }
    [h, squares, damping] = [moved, after, damping / 10];
    if (size < 1e-12) break;
  }
  return h;
}

/** How each coordinate changes with the nine numbers; the last equation holds their common size, which has no effect. */
function equations(h: readonly number[], source: readonly Point[], target: readonly Point[]): Equation[] {
  const list: Equation[] = source.flatMap(([x, y], i) => {
    const depth = h[6] * x + h[7] * y + h[8];
    const [u, v] = transformPoint(asMatrix(h), [x, y]);
    const [p, q, r] = [x / depth, y / depth, 1 / depth];
    return [
      { slopes: [p, q, r, 0, 0, 0, -u * p, -u * q, -u * r], value: target[i][0] - u },
      { slopes: [0, 0, 0, p, q, r, -v * p, -v * q, -v * r], value: target[i][1] - v },
    ];
  });
  return [...list, { slopes: h, value: 0 }];
}

function sumOfSquares(h: readonly number[], source: readonly Point[], target: readonly Point[]): number {
  const matrix = asMatrix(h);
  return source.reduce((sum, point, i) => {
    const [x, y] = transformPoint(matrix, point);
    return sum + (x - target[i][0]) ** 2 + (y - target[i][1]) ** 2;
  }, 0);
}

function asMatrix(h: readonly number[]): Matrix {
  return rows((r, c) => h[3 * r + c]);
}

function unit(h: readonly number[]): number[] {
  const size = Math.hypot(...h);
  return h.map((value) => value / size);
}

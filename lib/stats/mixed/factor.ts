import type { Blocks } from './blocks.ts';
import { cholesky, forwardSolve } from './cholesky.ts';
import { addProduct, mirror } from './dense.ts';
import type { LocalTerm } from './layout.ts';

/**
 * A model's blocks at one theta. With `W = I + Z Λ Λ' Z'` the covariance of the response over that of its residuals:
 * `l` holds each cluster's factor of `Λ'Z'ZΛ + I`, `t` its solution for `Λ'Z'U`, `s` the matrix `U'W⁻¹U` of the clusters
 * alone, and `k` the factor of `s` with the crossed coefficients scaled and made definite. The last diagonal entry of `k`
 * squared is the penalised residual sum of squares (Bates et al. 2015, J Stat Softw 67(1), eq. 44 to 48, by clusters).
 */
export interface Factored {
  readonly l: Float64Array;
  readonly t: Float64Array;
  readonly s: Float64Array;
  readonly k: Float64Array;
  /** log |W| and log |X'W⁻¹X|, X the model's own columns. */
  readonly logW: number;
  readonly logX: number;
  readonly residualSquares: number;
}

export function factor(model: Blocks, theta: Float64Array): Factored {
  const { p, crossed, clusters, size, zzStart, zuStart, local, rest } = model;
  const wide = crossed + p + 1;
  const l = model.zz.slice();
  const t = model.zu.slice();
  const s = model.uu.slice();
  const lambdas = local.map((term) => lambdaOf(model, theta, term.index, term.width));
  let logW = 0;
  for (let h = 0; h < clusters; h++) {
    const d = size[h];
    const atL = zzStart[h];
    const atT = zuStart[h];
    for (let i = 0; i < local.length; i++) {
      scaleColumns(l, d, d, atL, local[i], h, lambdas[i]);
      scaleRows(l, d, atL, local[i], h, lambdas[i]);
      scaleRows(t, wide, atT, local[i], h, lambdas[i]);
    }
    for (let i = 0; i < d; i++) l[atL + i * d + i] += 1;
    logW += cholesky(l, d, atL);
    forwardSolve(l, d, atL, t, wide, atT);
  }
  addProduct(s, t, 0, wide, wide, t, 0, wide, wide, t.length / wide, -1, true);
  mirror(s, wide);

  const k = s.slice();
  for (const { index, width, start, levels } of rest) {
    const lambda = lambdaOf(model, theta, index, width);
    const whole = { start: [start], count: [levels], width };
    scaleColumns(k, wide, wide, 0, whole, 0, lambda);
    scaleRows(k, wide, 0, whole, 0, lambda);
  }
  for (let i = 0; i < crossed; i++) k[i * wide + i] += 1;
  cholesky(k, wide);
  for (let i = 0; i < crossed; i++) logW += 2 * Math.log(k[i * wide + i]);
  let logX = 0;
  for (let i = 0; i < p; i++) {
    logX += 2 * Math.log(k[(crossed + i) * (wide + 1)]) + 2 * Math.log(Math.abs(model.r[i * (p + 1)]));
  }
  return { l, t, s, k, logW, logX, residualSquares: k[wide * wide - 1] ** 2 };
}

/** -2 log likelihood, restricted or not, with the residual variance at its best (profiled out). */
export function criterion(model: Blocks, { logW, logX, residualSquares }: Factored, method: 'REML' | 'ML'): number {
  const degrees = method === 'REML' ? model.n - model.p : model.n;
  return logW + (method === 'REML' ? logX : 0) + degrees * (1 + Math.log((2 * Math.PI * residualSquares) / degrees));
}

/** A term's relative factor, lower triangle, width by width, row after row; theta holds it column after column. */
export function lambdaOf(model: Blocks, theta: Float64Array, index: number, width: number): Float64Array {
  const lambda = new Float64Array(width * width);
  let at = model.thetaStart[index];
  for (let b = 0; b < width; b++) for (let a = b; a < width; a++) lambda[a * width + b] = theta[at++];
  return lambda;
}

type Levels = Pick<LocalTerm, 'width'> & { start: ArrayLike<number>; count: ArrayLike<number> };

/** M := M Λ over the columns of one term in cluster h; M has `rows` rows of `stride` at `at`. */
export function scaleColumns(
  m: Float64Array,
  rows: number,
  stride: number,
  at: number,
  { width, start, count }: Levels,
  h: number,
  lambda: Float64Array,
): void {
  for (let row = 0; row < rows; row++) {
    for (let level = 0, first = at + row * stride + start[h]; level < count[h]; level++, first += width) {
      for (let b = 0; b < width; b++) {
        let sum = 0;
        for (let a = b; a < width; a++) sum += m[first + a] * lambda[a * width + b];
        m[first + b] = sum;
      }
    }
  }
}

/** M := Λ' M over the rows of one term in cluster h. */
export function scaleRows(
  m: Float64Array,
  stride: number,
  at: number,
  { width, start, count }: Levels,
  h: number,
  lambda: Float64Array,
): void {
  // Rows of one coefficient each, the usual case, are one run of numbers.
  if (width === 1) {
    const end = at + (start[h] + count[h]) * stride;
    for (let i = at + start[h] * stride; i < end; i++) m[i] *= lambda[0];
    return;
  }
  for (let level = 0, first = at + start[h] * stride; level < count[h]; level++, first += width * stride) {
    for (let column = 0; column < stride; column++) {
      for (let b = 0; b < width; b++) {
        let sum = 0;
        for (let a = b; a < width; a++) sum += m[first + a * stride + column] * lambda[a * width + b];
        m[first + b * stride + column] = sum;
      }
    }
  }
}

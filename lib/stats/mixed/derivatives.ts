import type { Blocks } from './blocks.ts';
import { cholesky, inverseFromFactor } from './cholesky.ts';
import { bilinear, block, multiply, traceOfProduct, transpose } from './dense.ts';
import { type Pieces, parameterList } from './pieces.ts';

/**
 * First and second derivatives, by the relative covariances ψ, of what the likelihood is made of, with
 * `P = W⁻¹ - W⁻¹X (X'W⁻¹X)⁻¹ X'W⁻¹` (Searle, Casella & McCulloch 1992, Variance Components, ch. 6).
 */
export interface ByCovariance {
  /** tr(P Wᵢ) and tr(P Wᵢ P Wⱼ); under ML with W⁻¹ in place of P. */
  readonly trace: Float64Array;
  readonly traces: Float64Array;
  /** y'P y, y'P Wᵢ P y and y'P Wᵢ P Wⱼ P y. */
  readonly residualSquares: number;
  readonly square: Float64Array;
  readonly squares: Float64Array;
  /** (X'W⁻¹X)⁻¹, the fixed effects, and X'W⁻¹ Wᵢ W⁻¹ X, all in the orthonormal basis. */
  readonly covariance: Float64Array;
  readonly solution: Float64Array;
  readonly fixed: readonly Float64Array[];
}

export function byCovariance(p: number, parts: Pieces, method: 'REML' | 'ML'): ByCovariance {
  const v = p + 1;
  const m = parts.trace.length;
  const inner = (matrix: Float64Array) => block(matrix, v, 0, 0, p, p);
  const factor = inner(parts.once);
  cholesky(factor, p);
  const covariance = inverseFromFactor(factor, p);
  const solution = multiply(covariance, block(parts.once, v, 0, p, p, 1), p, p, 1);
  const left = Float64Array.from({ length: v }, (_, i) => (i < p ? -solution[i] : 1));
  const fixed = parts.twice.map(inner);
  const share = fixed.map((each) => multiply(covariance, each, p, p, p));
  const toResidual = parts.twice.map((each) => multiply(block(each, v, 0, 0, p, v), left, p, v, 1));
  const trace = parts.trace.slice();
  const traces = parts.traces.slice();
  const square = Float64Array.from(parts.twice, (each) => bilinear(left, each, left));
  const squares = new Float64Array(m * m);
  for (let i = 0; i < m; i++) {
    if (method === 'REML') for (let k = 0; k < p; k++) trace[i] -= share[i][k * p + k];
    for (let j = 0; j < m; j++) {
      const at = i * m + j;
      squares[at] = bilinear(left, parts.thrice[i][j], left) - bilinear(toResidual[i], covariance, toResidual[j]);
      if (method === 'ML') continue;
      traces[at] +=
        traceOfProduct(share[i], share[j], p) - 2 * traceOfProduct(covariance, inner(parts.thrice[i][j]), p);
    }
  }
  const residualSquares = bilinear(left, parts.once, left);
  return { trace, traces, residualSquares, square, squares, covariance, solution, fixed };
}

/** Slope and curvature of the profiled criterion by ψ: m values and m by m. */
export function criterionByCovariance(model: Blocks, by: ByCovariance, method: 'REML' | 'ML') {
  const degrees = method === 'REML' ? model.n - model.p : model.n;
  const m = by.trace.length;
  const s = by.residualSquares;
  const gradient = by.trace.map((trace, i) => trace - (degrees * by.square[i]) / s);
  const hessian = new Float64Array(m * m);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) {
      const at = i * m + j;
      hessian[at] = -by.traces[at] + degrees * ((2 * by.squares[at]) / s - (by.square[i] * by.square[j]) / (s * s));
    }
  }
  return { gradient, hessian };
}

/** dψ/dθ, m by m: a relative covariance is the product of two rows of its term's factor Λ. */
export function covarianceByTheta(model: Blocks, theta: Float64Array): Float64Array {
  const list = parameterList(model);
  const m = list.length;
  const jacobian = new Float64Array(m * m);
  const at = new Map(list.map((each, i) => [`${each.local},${each.rest},${each.a},${each.b}`, i]));
  const entry = (i: number, a: number, b: number) => {
    const index = at.get(`${list[i].local},${list[i].rest},${a},${b}`);
    return index === undefined ? 0 : theta[index];
  };
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) {
      const { a, b, local, rest } = list[i];
      if (local !== list[j].local || rest !== list[j].rest) continue;
      const { a: x, b: y } = list[j];
      jacobian[i * m + j] = (a === x ? entry(i, b, y) : 0) + (b === x ? entry(i, a, y) : 0);
    }
  }
  return jacobian;
}

/** Slope and curvature by ψ turned into slope and curvature by θ, exactly: ψ is quadratic in θ. */
export function toTheta(
  model: Blocks,
  theta: Float64Array,
  { gradient, hessian }: { gradient: Float64Array; hessian: Float64Array },
) {
  const list = parameterList(model);
  const m = list.length;
  const jacobian = covarianceByTheta(model, theta);
  const back = transpose(jacobian, m, m);
  const curvature = multiply(multiply(back, hessian, m, m, m), jacobian, m, m, m);
  for (const [i, { a, b, local, rest }] of list.entries()) {
    for (const [x, one] of list.entries()) {
      if (one.local !== local || one.rest !== rest) continue;
      for (const [y, two] of list.entries()) {
        if (two.local !== local || two.rest !== rest || one.b !== two.b) continue;
        const times = (a === one.a && b === two.a ? 1 : 0) + (b === one.a && a === two.a ? 1 : 0);
        curvature[x * m + y] += times * gradient[i];
      }
    }
  }
  return { gradient: multiply(back, gradient, m, m, 1), hessian: curvature };
}

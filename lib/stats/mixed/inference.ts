import { studentT } from '../distributions/studentT.ts';
import { bilinear, multiply, pseudoInverse, transpose } from './dense.ts';
import { byCovariance, covarianceByTheta, toTheta } from './derivatives.ts';
import type { Fit } from './fit.ts';
import { parameterList, pieces } from './pieces.ts';

/** A number from a model with what is known of it. */
export interface Estimate {
  readonly estimate: number;
  readonly se: number;
  readonly df: number;
  readonly t: number;
  readonly p: number;
  /** 95% interval from Student's t. */
  readonly lower: number;
  readonly upper: number;
}

/**
 * Satterthwaite's degrees of freedom for linear combinations of fixed effects: 2 v² / (g'A g), with v the variance of the
 * combination, g its slope by theta and the residual variance, and A twice the inverse curvature of the criterion there.
 * @returns a function from weights in the orthonormal basis to degrees of freedom
 * @source Satterthwaite 1946; Giesbrecht & Burns 1985; Kuznetsova et al. 2017, J Stat Softw 82(13)
 */
export function satterthwaite({
  blocks: model,
  theta,
  derivatives: by,
  method,
  variance,
}: Fit): (basis: Float64Array) => number {
  const p = model.p;
  const m = theta.length;
  const degrees = method === 'REML' ? model.n - p : model.n;
  const gradient = by.trace.map((trace, i) => trace - by.square[i] / variance);
  const hessian = by.traces.map((traces, at) => -traces + (2 * by.squares[at]) / variance);
  const jacobian = covarianceByTheta(model, theta);
  const back = transpose(jacobian, m, m);
  const curvature = toTheta(model, theta, { gradient, hessian }).hessian;
  const mixed = multiply(back, by.square, m, m, 1);
  const whole = new Float64Array((m + 1) ** 2);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) whole[i * (m + 1) + j] = curvature[i * m + j];
    whole[i * (m + 1) + m] = whole[m * (m + 1) + i] = mixed[i] / variance ** 2;
  }
  whole[(m + 1) ** 2 - 1] = (2 * by.residualSquares) / variance ** 3 - degrees / variance ** 2;
  const inverse = pseudoInverse(whole, m + 1);
  return (basis) => {
    const spread = bilinear(basis, by.covariance, basis);
    const along = multiply(by.covariance, basis, p, p, 1);
    const slope = by.fixed.map((each) => variance * bilinear(along, each, along));
    const g = Float64Array.from([...multiply(back, Float64Array.from(slope), m, m, 1), spread]);
    return (2 * (variance * spread) ** 2) / (2 * bilinear(g, inverse, g));
  };
}

/**
 * Kenward and Roger's covariance of the fixed effects, adjusted for small samples, and their degrees of freedom.
 * @returns functions from weights in the orthonormal basis to the adjusted variance, and to degrees of freedom
 * @source Kenward & Roger 1997, Biometrics 53:983-997; Halekoh & Højsgaard 2014, J Stat Softw 59(9)
 */
export function kenwardRoger({ blocks: model, theta, factored, variance }: Fit) {
  const { n, p } = model;
  const parts = pieces(model, theta, factored);
  const by = byCovariance(p, parts, 'REML');
  const psi = relativeCovariances(model, theta);
  const m = theta.length;
  const v = p + 1;
  const inner = (matrix: Float64Array) =>
    Float64Array.from({ length: p * p }, (_, at) => matrix[((at / p) | 0) * v + (at % p)]);
  // The residual variance multiplies I = W - Σ ψᵢ Wᵢ: its products follow from those of the others.
  const twice: Float64Array[] = by.fixed.slice();
  const thrice: Float64Array[][] = parts.thrice.map((row) => row.map(inner));
  const information = new Float64Array((m + 1) ** 2);
  for (let i = 0; i < m; i++) for (let j = 0; j < m; j++) information[i * (m + 1) + j] = by.traces[i * m + j];
  const once = inner(parts.once);
  twice.push(lessWeighted(once, psi, by.fixed));
  const withResidual = by.fixed.map((each, j) =>
    lessWeighted(
      each,
      psi,
      by.fixed.map((_, i) => thrice[i][j]),
    ),
  );
  for (let j = 0; j < m; j++) thrice[j].push(transpose(withResidual[j], p, p));
  thrice.push([...withResidual, lessWeighted(twice[m], psi, withResidual)]);
  let corner = n - p;
  for (let j = 0; j < m; j++) {
    let sum = by.trace[j];
    for (let i = 0; i < m; i++) sum -= psi[i] * by.traces[i * m + j];
    information[j * (m + 1) + m] = information[m * (m + 1) + j] = sum;
    corner -= psi[j] * (by.trace[j] + sum);
  }
  information[(m + 1) ** 2 - 1] = corner;
  const w = pseudoInverse(information, m + 1).map((value) => 2 * value);

  const covariance = by.covariance;
  const sandwich = new Float64Array(p * p);
  for (let i = 0; i <= m; i++) {
    const through = multiply(twice[i], covariance, p, p, p);
    for (let j = 0; j <= m; j++) {
      const joined = multiply(through, twice[j], p, p, p);
      for (let at = 0; at < p * p; at++) sandwich[at] += w[i * (m + 1) + j] * (thrice[i][j][at] - joined[at]);
    }
  }
  const correction = multiply(multiply(covariance, sandwich, p, p, p), covariance, p, p, p);
  return {
    variance: (basis: Float64Array) =>
      variance * (bilinear(basis, covariance, basis) + 2 * bilinear(basis, correction, basis)),
    df: (basis: Float64Array) => {
      const along = multiply(covariance, basis, p, p, 1);
      const spread = bilinear(basis, covariance, basis);
      const a = Float64Array.from(twice, (each) => bilinear(along, each, along) / spread);
      return 2 / bilinear(a, w, a);
    },
  };
}

export function withDegrees(estimate: number, se: number, df: number): Estimate {
  const t = estimate / se;
  const reach = studentT.quantile(0.975, df) * se;
  return { estimate, se, df, t, p: studentT.twoSided(t, df), lower: estimate - reach, upper: estimate + reach };
}

/** ψ = vech(Λ Λ') in the order of theta. */
function relativeCovariances(model: Fit['blocks'], theta: Float64Array): Float64Array {
  const list = parameterList(model);
  return Float64Array.from(list, ({ a, b, local, rest }) => {
    let sum = 0;
    for (const [i, one] of list.entries()) {
      if (one.local !== local || one.rest !== rest || one.a !== a) continue;
      const k = list.findIndex((two) => two.local === local && two.rest === rest && two.a === b && two.b === one.b);
      if (k >= 0) sum += theta[i] * theta[k];
    }
    return sum;
  });
}

function lessWeighted(whole: Float64Array, weights: Float64Array, parts: readonly Float64Array[]): Float64Array {
  return whole.map((value, at) => parts.reduce((left, part, i) => left - weights[i] * part[at], value));
}

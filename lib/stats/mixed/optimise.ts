import type { Blocks } from './blocks.ts';
import { cholesky } from './cholesky.ts';
import { fromEigen, multiply, pseudoInverse, symmetricEigen } from './dense.ts';
import { type ByCovariance, byCovariance, criterionByCovariance, toTheta } from './derivatives.ts';
import { criterion, type Factored, factor } from './factor.ts';
import { newton } from './newton.ts';
import { parameterList, pieces } from './pieces.ts';

export interface Optimum {
  readonly theta: Float64Array;
  readonly criterion: number;
  readonly factored: Factored;
  /** As they were before the last step, which changes the criterion by less than its last digit. */
  readonly derivatives: ByCovariance;
  readonly converged: boolean;
}

/**
 * The theta at which -2 log likelihood is least, by Newton steps with exact derivatives.
 *
 * The criterion doesn't change when a column of Λ changes its sign, so theta needs no bounds: a variance at zero is a
 * smooth minimum of its own standard deviation. As the slope there is zero whatever lies beside it, such a minimum is
 * looked at again from a little further up.
 */
export function optimise(model: Blocks, method: 'REML' | 'ML'): Optimum {
  const at = (theta: Float64Array) => {
    const factored = factor(model, theta);
    let known: ByCovariance | undefined;
    const derivatives = () => {
      known ??= byCovariance(model.p, pieces(model, theta, factored), method);
      return known;
    };
    return {
      value: criterion(model, factored, method),
      slopes: () => toTheta(model, theta, criterionByCovariance(model, derivatives(), method)),
      extra: { factored, derivatives },
    };
  };
  let best = newton(startingTheta(model), at);
  for (let tries = 0; tries < 2 * best.x.length; tries++) {
    const away = offZero(model, best.x, best.before.derivatives(), method);
    if (away === undefined) break;
    best = newton(away, at);
  }
  const theta = withPositiveDiagonals(model, best.x);
  const same = theta.every((each, i) => each === best.x[i]);
  return {
    theta,
    criterion: best.value,
    factored: same ? best.extra.factored : factor(model, theta),
    derivatives: best.before.derivatives(),
    converged: best.converged,
  };
}

/** Slope and curvature of the criterion at theta. */
export function slopes(model: Blocks, theta: Float64Array, factored: Factored, method: 'REML' | 'ML') {
  const by = byCovariance(model.p, pieces(model, theta, factored), method);
  return toTheta(model, theta, criterionByCovariance(model, by, method));
}

/**
 * Variances from the squares of what least squares leaves, set against what each is expected to be: exact where a design is
 * balanced, near elsewhere, and never quite at zero (MINQUE(0), Searle, Casella & McCulloch 1992, section 11.3).
 */
function startingTheta(model: Blocks): Float64Array {
  const list = parameterList(model);
  const m = list.length;
  const zero = new Float64Array(m);
  const { trace, traces, square, residualSquares } = byCovariance(
    model.p,
    pieces(model, zero, factor(model, zero)),
    'REML',
  );
  const expected = new Float64Array((m + 1) ** 2).fill(model.n - model.p);
  for (let i = 0; i < m; i++) {
    expected.set(traces.subarray(i * m, (i + 1) * m), i * (m + 1));
    expected[i * (m + 1) + m] = expected[m * (m + 1) + i] = trace[i];
  }
  const variances = multiply(
    pseudoInverse(expected, m + 1),
    Float64Array.of(...square, residualSquares),
    m + 1,
    m + 1,
    1,
  );
  const theta = new Float64Array(m);
  for (const [index, start] of model.thetaStart.entries()) {
    const width = [...model.local, ...model.rest].find((term) => term.index === index)!.width;
    const psi = new Float64Array(width * width);
    for (let b = 0, i = start; b < width; b++) {
      for (let a = b; a < width; a++, i++) psi[a * width + b] = psi[b * width + a] = variances[i] / variances[m];
    }
    const { values, vectors } = symmetricEigen(psi, width);
    const definite = fromEigen(values, vectors, (value) => Math.max(value, 0.01));
    cholesky(definite, width);
    for (let b = 0, i = start; b < width; b++) for (let a = b; a < width; a++, i++) theta[i] = definite[a * width + b];
  }
  return theta.every(Number.isFinite) ? theta : theta.map((_, i) => (list[i].a === list[i].b ? 1 : 0));
}

/** Theta with the first zero variance raised that would do better so, by the slope of the criterion in the variance. */
function offZero(
  model: Blocks,
  theta: Float64Array,
  derivatives: ByCovariance,
  method: 'REML' | 'ML',
): Float64Array | undefined {
  const { gradient } = criterionByCovariance(model, derivatives, method);
  const low = parameterList(model).findIndex(
    ({ a, b }, i) => a === b && Math.abs(theta[i]) < 1e-6 && gradient[i] < -1e-6,
  );
  return low < 0 ? undefined : theta.map((each, i) => (i === low ? 0.1 : each));
}

function withPositiveDiagonals(model: Blocks, theta: Float64Array): Float64Array {
  const list = parameterList(model);
  const flipped = theta.slice();
  for (const [i, { a, b, local, rest }] of list.entries()) {
    if (a !== b || theta[i] >= 0) continue;
    for (const [k, other] of list.entries()) {
      if (other.local === local && other.rest === rest && other.b === b) flipped[k] = -theta[k];
    }
  }
  return flipped.map((each) => (Math.abs(each) < 1e-7 ? 0 : each));
}

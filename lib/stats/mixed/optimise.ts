import type { Blocks } from './blocks.ts';
import { bilinear, fromEigen, multiply, symmetricEigen } from './dense.ts';
import { byCovariance, criterionByCovariance, toTheta } from './derivatives.ts';
import { criterion, type Factored, factor } from './factor.ts';
import { parameterList, pieces } from './pieces.ts';

export interface Optimum {
  readonly theta: Float64Array;
  readonly criterion: number;
  readonly factored: Factored;
  readonly iterations: number;
  readonly converged: boolean;
}

const MOST_STEPS = 100;

/**
 * The theta at which -2 log likelihood is least, by Newton steps with exact derivatives.
 *
 * The criterion doesn't change when a column of Λ changes its sign, so theta needs no bounds: a variance at zero is a
 * smooth minimum of its own standard deviation. Saddles are left by taking curvatures by their size (Dauphin et al. 2014,
 * arXiv:1406.2572), and every step must lower the criterion.
 */
export function optimise(model: Blocks, method: 'REML' | 'ML', start = startingTheta(model)): Optimum {
  let theta = start;
  let factored = factor(model, theta);
  let value = criterion(model, factored, method);
  let iterations = 0;
  let converged = false;
  while (iterations++ < MOST_STEPS) {
    const { gradient, hessian } = slopes(model, theta, factored, method);
    const { values, vectors } = symmetricEigen(hessian, theta.length);
    const floor = 1e-10 * values.reduce((most, each) => Math.max(most, Math.abs(each)), 1e-10);
    const inverse = fromEigen(values, vectors, (each) => 1 / Math.max(Math.abs(each), floor));
    const step = multiply(inverse, gradient, theta.length, theta.length, 1);
    const decrease = bilinear(gradient, inverse, gradient);
    if (decrease < 1e-14) {
      const away = offZero(model, theta, factored, method);
      converged = away === undefined;
      if (away === undefined) break;
      theta = away;
      factored = factor(model, theta);
      value = criterion(model, factored, method);
      continue;
    }
    let length = Math.min(1, 2 / Math.max(...step.map(Math.abs)));
    let next: typeof factored | undefined;
    let nextTheta = theta;
    for (let halving = 0; halving < 40; halving++, length /= 2) {
      nextTheta = theta.map((each, i) => each - length * step[i]);
      const tried = factor(model, nextTheta);
      const reached = criterion(model, tried, method);
      if (reached <= value + 1e-12 * Math.abs(value)) {
        next = tried;
        value = reached;
        break;
      }
    }
    if (next === undefined) break;
    theta = nextTheta;
    factored = next;
    // Below this no double can show the criterion falling; one more step has been taken already.
    if (decrease < 1e-12 * Math.max(1, Math.abs(value)) * 1e-3) converged = true;
    if (converged) break;
  }
  theta = withPositiveDiagonals(model, theta);
  return { theta, criterion: value, factored: factor(model, theta), iterations, converged };
}

/** Slope and curvature of the criterion at theta. */
export function slopes(model: Blocks, theta: Float64Array, factored: Factored, method: 'REML' | 'ML') {
  const by = byCovariance(model.p, pieces(model, theta, factored), method);
  return toTheta(model, theta, criterionByCovariance(model, by, method));
}

function startingTheta(model: Blocks): Float64Array {
  return Float64Array.from(parameterList(model), ({ a, b }) => (a === b ? 1 : 0));
}

/** At a variance of exactly zero the slope is zero whatever lies beside it: look whether more variance would be better. */
function offZero(
  model: Blocks,
  theta: Float64Array,
  factored: Factored,
  method: 'REML' | 'ML',
): Float64Array | undefined {
  const by = byCovariance(model.p, pieces(model, theta, factored), method);
  const { gradient } = criterionByCovariance(model, by, method);
  const list = parameterList(model);
  for (const [i, { a, b }] of list.entries()) {
    if (a === b && Math.abs(theta[i]) < 1e-6 && gradient[i] < -1e-6) {
      return theta.map((each, k) => (k === i ? 0.1 : each));
    }
  }
  return undefined;
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

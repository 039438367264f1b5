import type { Blocks } from './blocks.ts';
import { byCovariance, criterionByCovariance, toTheta } from './derivatives.ts';
import { criterion, type Factored, factor } from './factor.ts';
import { newton } from './newton.ts';
import { parameterList, pieces } from './pieces.ts';

export interface Optimum {
  readonly theta: Float64Array;
  readonly criterion: number;
  readonly factored: Factored;
  readonly converged: boolean;
}

/**
 * The theta at which -2 log likelihood is least, by Newton steps with exact derivatives.
 *
 * The criterion doesn't change when a column of Λ changes its sign, so theta needs no bounds: a variance at zero is a
 * smooth minimum of its own standard deviation. As the slope there is zero whatever lies beside it, such a minimum is
 * looked at again from a little further up.
 */
export function optimise(model: Blocks, method: 'REML' | 'ML', start = startingTheta(model)): Optimum {
  const at = (theta: Float64Array) => {
    const factored = factor(model, theta);
    const value = criterion(model, factored, method);
    return { value, slopes: () => slopes(model, theta, factored, method), extra: factored };
  };
  let best = newton(start, at);
  for (let tries = 0; tries < 2 * start.length; tries++) {
    const away = offZero(model, best.x, best.extra, method);
    if (away === undefined) break;
    best = newton(away, at);
  }
  const theta = withPositiveDiagonals(model, best.x);
  return { theta, criterion: best.value, factored: factor(model, theta), converged: best.converged };
}

/** Slope and curvature of the criterion at theta. */
export function slopes(model: Blocks, theta: Float64Array, factored: Factored, method: 'REML' | 'ML') {
  const by = byCovariance(model.p, pieces(model, theta, factored), method);
  return toTheta(model, theta, criterionByCovariance(model, by, method));
}

function startingTheta(model: Blocks): Float64Array {
  return Float64Array.from(parameterList(model), ({ a, b }) => (a === b ? 1 : 0));
}

/** Theta with the first zero variance raised that would do better so, by the slope of the criterion in the variance. */
function offZero(
  model: Blocks,
  theta: Float64Array,
  factored: Factored,
  method: 'REML' | 'ML',
): Float64Array | undefined {
  const list = parameterList(model);
  if (!list.some(({ a, b }, i) => a === b && Math.abs(theta[i]) < 1e-6)) return undefined;
  const by = byCovariance(model.p, pieces(model, theta, factored), method);
  const { gradient } = criterionByCovariance(model, by, method);
  const low = list.findIndex(({ a, b }, i) => a === b && Math.abs(theta[i]) < 1e-6 && gradient[i] < -1e-6);
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

import type { Blocks } from './blocks.ts';
import { type ByCovariance, byCovariance, criterionByCovariance, toTheta } from './derivatives.ts';
import { criterion, type Factored, factor } from './factor.ts';
import { momentEquations, startingTheta } from './moments.ts';
import { newton } from './newton.ts';
import { parameterList, pieces } from './pieces.ts';

export interface Optimum {
  readonly theta: Float64Array;
  readonly criterion: number;
  readonly factored: Factored;
  /** As they were before the last step, which changes the criterion by less than its last digit. */
  readonly derivatives: ByCovariance;
  readonly converged: boolean;
  /** What another response of the same design can start from. */
  readonly moments: Float64Array;
}

/**
 * The theta at which -2 log likelihood is least, by Newton steps with exact derivatives.
 *
 * The criterion doesn't change when a column of Λ changes its sign, so theta needs no bounds: a variance at zero is a
 * smooth minimum of its own standard deviation. As the slope there is zero whatever lies beside it, such a minimum is
 * looked at again from a little further up.
 */
export function optimise(model: Blocks, method: 'REML' | 'ML', moments = momentEquations(model)): Optimum {
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
  let best = newton(startingTheta(model, moments), at);
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
    moments,
  };
}

/** Slope and curvature of the criterion at theta. */
export function slopes(model: Blocks, theta: Float64Array, factored: Factored, method: 'REML' | 'ML') {
  const by = byCovariance(model.p, pieces(model, theta, factored), method);
  return toTheta(model, theta, criterionByCovariance(model, by, method));
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

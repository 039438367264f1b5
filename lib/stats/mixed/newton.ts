import { bilinear, fromEigen, multiply, symmetricEigen } from './dense.ts';

/** A function's value at a point, with its slope and curvature there worked out only when asked for. */
export interface Point<Extra> {
  readonly value: number;
  readonly slopes: () => { readonly gradient: Float64Array; readonly hessian: Float64Array };
  readonly extra: Extra;
}

export interface Minimum<Extra> {
  readonly x: Float64Array;
  readonly value: number;
  readonly extra: Extra;
  /** What was known at the point before the last step. */
  readonly before: Extra;
  readonly iterations: number;
  readonly converged: boolean;
}

const MOST_STEPS = 100;

/**
 * The nearest minimum of a smooth function, by Newton steps that must go down. Curvatures are taken by their size, so that
 * saddles are left behind (Dauphin et al. 2014, arXiv:1406.2572); steps are halved until the value falls.
 */
export function newton<Extra>(start: Float64Array, at: (x: Float64Array) => Point<Extra>): Minimum<Extra> {
  const n = start.length;
  let x = start;
  let here = at(x);
  let before = here.extra;
  let converged = n === 0;
  let iterations = 0;
  while (!converged && iterations++ < MOST_STEPS) {
    const { gradient, hessian } = here.slopes();
    const { values, vectors } = symmetricEigen(hessian, n);
    const floor = 1e-10 * values.reduce((most, each) => Math.max(most, Math.abs(each)), 1e-10);
    const inverse = fromEigen(values, vectors, (each) => 1 / Math.max(Math.abs(each), floor));
    const step = multiply(inverse, gradient, n, n, 1);
    // What the step should gain; below the last digits of the value no line search can see it.
    const gain = bilinear(gradient, inverse, gradient);
    const unseen = 1e-14 * Math.max(1, Math.abs(here.value));
    converged = gain < unseen;
    const next = goDown(x, step, gain, here, at);
    before = here.extra;
    if (next === undefined) break;
    [x, here] = next;
  }
  return { x, value: here.value, extra: here.extra, before, iterations, converged };
}

/**
 * The first point along the step that gains a ten-thousandth of what the slope promises (Armijo 1966, Pacific Journal of
 * Mathematics 16:1–3): as the value is the same at a point and its mirror image, a step across to there would pass otherwise.
 */
function goDown<Extra>(
  x: Float64Array,
  step: Float64Array,
  gain: number,
  from: Point<Extra>,
  at: (x: Float64Array) => Point<Extra>,
) {
  const largest = (values: Float64Array) => values.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  // No further than twice as far as it has come, or 2: nearer to the start the curvature says little of what lies beyond.
  let length = Math.min(1, (2 * Math.max(1, largest(x))) / largest(step));
  for (let halving = 0; halving < 40; halving++, length /= 2) {
    const tried = x.map((each, i) => each - length * step[i]);
    const there = at(tried);
    const promised = 1e-4 * length * gain;
    if (there.value <= from.value - promised + 1e-12 * Math.abs(from.value)) return [tried, there] as const;
  }
  return undefined;
}

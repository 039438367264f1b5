import { chiSquared } from '../distributions/chiSquared.ts';
import { type Blocks, blocks, withResponse } from './blocks.ts';
import { multiply, transpose } from './dense.ts';
import { byCovariance, covarianceByTheta, toTheta } from './derivatives.ts';
import type { Design } from './design.ts';
import { factor } from './factor.ts';
import { type MixedModel, refitModel } from './mixedModel.ts';
import { momentEquations } from './moments.ts';
import { newton } from './newton.ts';
import { optimise } from './optimise.ts';
import { pieces } from './pieces.ts';

export interface ProfileInterval {
  readonly kind: 'sd' | 'correlation' | 'residual sd' | 'fixed';
  readonly by?: string;
  readonly term: string;
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Intervals that hold every value at which the likelihood, at its best in all other parameters, is not significantly
 * lower than at the estimate. By ML, whichever way the model was fitted.
 * @param level share of such intervals that hold the truth
 * @returns one for each deviation, correlation, the residual deviation and each fixed effect; 0 for a deviation or ±1 for
 *   a correlation means that the likelihood never falls so far on that side
 * @source Bates, Mächler, Bolker & Walker 2015, J Stat Softw 67(1), section 5.1
 */
export function profileIntervals(model: MixedModel, level = 0.95): ProfileInterval[] {
  const best = model.method === 'ML' ? model : refitModel(model, model.fit.design.y, 'ML');
  const cut = best.criterion + chiSquared.quantile(level, 1);
  const out: ProfileInterval[] = [];
  const add = (row: Omit<ProfileInterval, 'lower' | 'upper'>, guess: number, bounds: Bounds, rise: Rise) => {
    const lower = crossing(rise, row.estimate, -guess, bounds[0]);
    out.push({ ...row, lower, upper: crossing(rise, row.estimate, guess, bounds[1]) });
  };

  let at = 0;
  for (const [index, { by, coefficients }] of best.fit.design.random.entries()) {
    const sds = best.random.slice(at, at + coefficients.length);
    at += coefficients.length;
    for (const [k, { name, scale }] of coefficients.entries()) {
      const frame = reordered(best.fit.design, index, [k]);
      const rise: Rise = (sd) => lowest(frame, best, { kind: 'sd', index, value: sd * scale }) - cut;
      add(
        { kind: 'sd', by, term: name, estimate: sds[k].sd },
        sds[k].sd / 2 || best.residualSd / 10,
        [0, Infinity],
        rise,
      );
    }
    for (let b = 0; b < coefficients.length; b++) {
      for (let a = b + 1; a < coefficients.length; a++) {
        const frame = reordered(best.fit.design, index, [b, a]);
        const names = [coefficients[b].name, coefficients[a].name] as const;
        const estimate = best.correlations.find(
          ({ by: other, terms }) => other === by && terms[0] === names[0] && terms[1] === names[1],
        )!.correlation;
        const rise: Rise = (value) => lowest(frame, best, { kind: 'correlation', index, value }) - cut;
        add({ kind: 'correlation', by, term: names.join(' with '), estimate }, 0.2, [-1, 1], rise);
      }
    }
  }
  const frame = { design: best.fit.design, blocks: best.fit.blocks };
  const residual: Rise = (sd) => lowest(frame, best, { kind: 'residual', index: -1, value: sd }) - cut;
  add({ kind: 'residual sd', term: '', estimate: best.residualSd }, best.residualSd / 5, [0, Infinity], residual);

  for (const { term, estimate, se } of best.fixed) {
    const column = best.fit.design.terms.findIndex(({ name }) => name === term);
    const { values } = best.fit.design.terms[column];
    const without = blocks({ ...best.fit.design, terms: best.fit.design.terms.filter((_, i) => i !== column) });
    const moments = momentEquations(without);
    const rise: Rise = (value) => {
      const response = best.fit.design.y.map((y, row) => y - value * values[row]);
      return optimise(withResponse(without, response), 'ML', moments).criterion - cut;
    };
    add({ kind: 'fixed', term, estimate }, se, [-Infinity, Infinity], rise);
  }
  return out;
}

type Rise = (value: number) => number;
type Bounds = readonly [number, number];
interface Held {
  readonly kind: 'sd' | 'correlation' | 'residual';
  readonly index: number;
  readonly value: number;
}

interface Frame {
  readonly design: Design;
  readonly blocks: Blocks;
}

/** The model with some coefficients of one random term put first: a covariance's factor then says of them directly. */
function reordered(rows: Design, index: number, first: readonly number[]): Frame {
  const random = rows.random.map((term, k) => {
    if (k !== index) return term;
    const rest = term.coefficients.filter((_, i) => !first.includes(i));
    return { ...term, coefficients: [...first.map((i) => term.coefficients[i]), ...rest] };
  });
  const design = { ...rows, random };
  return { design, blocks: blocks(design) };
}

/** The least deviance with one parameter held, over the others: theta and u, the log of the residual deviation. */
function lowest({ blocks: model }: Frame, best: MixedModel, held: Held): number {
  const m = model.parameters;
  const start = model.thetaStart[held.index] ?? 0;
  const width = best.fit.design.random[held.index]?.coefficients.length ?? 0;
  const last = start + width;
  const free = Array.from({ length: m + 1 }, (_, i) => i).filter((i) =>
    held.kind === 'sd' ? i !== start : held.kind === 'residual' ? i !== m : i !== start + 1,
  );
  // Of a held correlation r the second row of the factor is t (r, √(1 - r²)), with t free in the place of its diagonal.
  const across = Math.sqrt(Math.max(0, 1 - held.value ** 2));
  const whole = (x: Float64Array): Float64Array => {
    const z = new Float64Array(m + 1);
    for (const [k, i] of free.entries()) z[i] = x[k];
    if (held.kind === 'sd') z[start] = held.value * Math.exp(-z[m]);
    if (held.kind === 'residual') z[m] = Math.log(held.value);
    if (held.kind === 'correlation') {
      z[start + 1] = z[last] * held.value;
      z[last] *= across;
    }
    return z;
  };
  const jacobian = (z: Float64Array): Float64Array => {
    const j = new Float64Array((m + 1) * free.length);
    for (const [k, i] of free.entries()) j[i * free.length + k] = 1;
    if (held.kind === 'sd') j[start * free.length + free.indexOf(m)] = -z[start];
    if (held.kind === 'correlation') {
      const k = free.indexOf(last);
      j[last * free.length + k] = across;
      j[(start + 1) * free.length + k] = held.value;
    }
    return j;
  };
  const at = (x: Float64Array) => {
    const z = whole(x);
    const theta = z.slice(0, m);
    const variance = Math.exp(2 * z[m]);
    const factored = factor(model, theta);
    const value = model.n * (Math.log(2 * Math.PI) + 2 * z[m]) + factored.logW + factored.residualSquares / variance;
    const slopes = () => {
      const all = devianceSlopes(model, theta, variance);
      const j = jacobian(z);
      const back = transpose(j, m + 1, free.length);
      const hessian = multiply(
        multiply(back, all.hessian, free.length, m + 1, m + 1),
        j,
        free.length,
        m + 1,
        free.length,
      );
      const u = free.indexOf(m);
      if (held.kind === 'sd') hessian[u * free.length + u] += all.gradient[start] * z[start];
      return { gradient: multiply(back, all.gradient, free.length, m + 1, 1), hessian };
    };
    return { value, slopes, extra: undefined };
  };
  const begin = [...Array.from({ length: m }, (_, i) => (isDiagonal(model, i) ? 1 : 0)), Math.log(best.residualSd)];
  return newton(
    Float64Array.from(free, (i) => begin[i]),
    at,
  ).value;
}

function isDiagonal({ local, rest, thetaStart }: Blocks, i: number): boolean {
  return [...local, ...rest].some(({ index, width }) => {
    for (let b = 0, at = thetaStart[index]; b < width; at += width - b, b++) if (at === i) return true;
    return false;
  });
}

/** Slope and curvature of the deviance by theta and by u. */
function devianceSlopes(model: Blocks, theta: Float64Array, variance: number) {
  const m = theta.length;
  const by = byCovariance(model.p, pieces(model, theta, factor(model, theta)), 'ML');
  const inner = toTheta(model, theta, {
    gradient: by.trace.map((trace, i) => trace - by.square[i] / variance),
    hessian: by.traces.map((traces, i) => -traces + (2 * by.squares[i]) / variance),
  });
  const mixed = multiply(transpose(covarianceByTheta(model, theta), m, m), by.square, m, m, 1);
  const gradient = new Float64Array(m + 1);
  const hessian = new Float64Array((m + 1) ** 2);
  gradient.set(inner.gradient);
  gradient[m] = 2 * (model.n - by.residualSquares / variance);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) hessian[i * (m + 1) + j] = inner.hessian[i * m + j];
    hessian[i * (m + 1) + m] = hessian[m * (m + 1) + i] = (2 * mixed[i]) / variance;
  }
  hessian[(m + 1) ** 2 - 1] = (4 * by.residualSquares) / variance;
  return { gradient, hessian };
}

/** Where a rise from below zero at `from` reaches zero, going by `step`; the bound where it never does. */
function crossing(rise: Rise, from: number, step: number, bound: number): number {
  let inside = from;
  let low = Number.NaN;
  for (let tries = 0; tries < 60; tries++) {
    let outside = inside + step;
    const over = step < 0 ? outside <= bound : outside >= bound;
    if (over) outside = bound;
    const height = rise(outside);
    if (height >= 0) return root(rise, inside, low, outside, height);
    if (over) return bound;
    inside = outside;
    low = height;
    step *= 1.5;
  }
  return bound;
}

/** Brent-like: false position with the Illinois rule, to ten digits of the bracket. */
function root(rise: Rise, a: number, fa: number, b: number, fb: number): number {
  let [x, fx, y, fy] = [a, Number.isNaN(fa) ? rise(a) : fa, b, fb];
  for (let i = 0; i < 100 && Math.abs(y - x) > 1e-11 * (Math.abs(x) + Math.abs(y)); i++) {
    const z = i % 4 === 3 ? (x + y) / 2 : (x * fy - y * fx) / (fy - fx);
    const fz = rise(z);
    if (Math.abs(fz) < 1e-10) return z;
    if (fz < 0 === fy < 0) {
      [y, fy] = [z, fz];
      fx /= 2;
    } else {
      [x, fx, y, fy] = [y, fy, z, fz];
    }
  }
  return (x + y) / 2;
}

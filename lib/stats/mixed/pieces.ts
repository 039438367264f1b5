import type { Blocks } from './blocks.ts';
import { forwardSolve, inverseFromFactor } from './cholesky.ts';
import { addProduct, block, mirror, multiply, subtract, traceOfProduct, transpose } from './dense.ts';
import { type Factored, lambdaOf, scaleColumns, scaleRows } from './factor.ts';

/**
 * The pieces that every derivative of a mixed model is made of. The covariance of the response over that of its residuals
 * is `W = I + Σ ψᵢ Wᵢ`, linear in the relative covariances ψ = vech(Λ Λ') of the random terms, and with `V = [X | y]`:
 * all of it comes out of one pass over the clusters, at any number of rows.
 */
export interface Pieces {
  /** tr(W⁻¹ Wᵢ). */
  readonly trace: Float64Array;
  /** tr(W⁻¹ Wᵢ W⁻¹ Wⱼ), m by m. */
  readonly traces: Float64Array;
  /** V'W⁻¹ V, p + 1 by p + 1. */
  readonly once: Float64Array;
  /** V'W⁻¹ Wᵢ W⁻¹ V, for each i. */
  readonly twice: readonly Float64Array[];
  /** V'W⁻¹ Wᵢ W⁻¹ Wⱼ W⁻¹ V, for each i and j. */
  readonly thrice: readonly (readonly Float64Array[])[];
}

/** A relative covariance: the entries (u, v) of its term's coefficients that it multiplies, both ways off the diagonal. */
interface Parameter {
  /** Index into the local or the crossed terms. */
  readonly local: number;
  readonly rest: number;
  readonly a: number;
  readonly b: number;
}

export function pieces(model: Blocks, theta: Float64Array, factored: Factored): Pieces {
  const { p, crossed: c, clusters, size, zzStart, zuStart, local, rest } = model;
  const { l, t, s, k } = factored;
  const v = p + 1;
  const wide = c + v;
  const parameters = parameterList(model);
  const m = parameters.length;
  const lambdas = local.map((term) => lambdaOf(model, theta, term.index, term.width));

  // The crossed coefficients Z_r, scaled to F = Z_r Λ_r: W⁻¹ = C⁻¹ - C⁻¹F q F'C⁻¹, C the covariance of clusters alone.
  const scaled = (matrix: Float64Array, rows: number, stride: number): Float64Array => {
    const out = matrix.slice();
    for (const { index, width, start, levels } of rest) {
      const whole = { start: [start], count: [levels], width };
      scaleColumns(out, rows, stride, 0, whole, 0, lambdaOf(model, theta, index, width));
    }
    return out;
  };
  const q = inverseFromFactor(k, c, wide);
  const fr = transpose(scaled(block(s, wide, 0, 0, c, c), c, c), c, c);
  const fv = transpose(scaled(block(s, wide, c, 0, v, c), v, c), v, c);
  const qfr = multiply(q, fr, c, c, c);
  const qfv = multiply(q, fv, c, c, v);
  const rr = subtract(block(s, wide, 0, 0, c, c), multiply(transpose(fr, c, c), qfr, c, c, c));
  const rv = subtract(block(s, wide, 0, c, c, v), multiply(transpose(fr, c, c), qfv, c, c, v));
  const once = subtract(block(s, wide, c, c, v, v), multiply(transpose(fv, c, v), qfv, v, c, v));

  const trace = new Float64Array(m);
  const traces = new Float64Array(m * m);
  const twice = parameters.map(() => new Float64Array(v * v));
  const thrice: Float64Array[][] = parameters.map(() => parameters.map(() => new Float64Array(v * v)));
  const viaF = parameters.map(() => new Float64Array(v * c));
  const fToF = parameters.map(() => new Float64Array(c * c));
  const toCrossed = parameters.map(() => new Float64Array(v * c));
  const crossedBoth = parameters.map(() => new Float64Array(c * c));

  const largest = size.reduce((most, each) => Math.max(most, each), 0);
  const runs = parameters.map(({ a, b }) => (a === b ? [new Run()] : [new Run(), new Run()]));
  const middle = parameters.map(() => new Float64Array(largest * v));
  const y = new Float64Array(largest * largest);
  const a = new Float64Array(largest * largest);
  const b = new Float64Array(largest * wide);
  for (let h = 0; h < clusters; h++) {
    const d = size[h];
    const atZ = zzStart[h];
    const atU = zuStart[h];
    // a = Z'C⁻¹Z and b = Z'C⁻¹[Z_r | V], from what the factor left: minus the squares of L⁻¹Λ'Z'Z and its products with t.
    for (let i = 0; i < d * d; i++) y[i] = a[i] = model.zz[atZ + i];
    for (let i = 0; i < d * wide; i++) b[i] = model.zu[atU + i];
    for (let i = 0; i < local.length; i++) scaleRows(y, d, 0, local[i], h, lambdas[i]);
    forwardSolve(l, d, atZ, y, d, 0);
    addProduct(a, y, 0, d, d, y, 0, d, d, d, -1, true);
    mirror(a, d);
    addProduct(b, y, 0, d, d, t, atU, wide, wide, d, -1);
    let hv: Float64Array = c === 0 ? b : block(b, wide, 0, c, d, v);
    let less: Float64Array = a;
    for (let i = 0; i < m; i++) {
      const { local: at, a: row, b: column } = parameters[i];
      if (at >= 0) place(runs[i], local[at].start[h], local[at].width, local[at].count[h], row, column);
    }
    if (c > 0) {
      const bf = scaled(block(b, wide, 0, 0, d, c), d, c);
      hv = subtract(hv, multiply(bf, qfv, d, c, v));
      const bq = multiply(bf, q, d, c, c);
      less = subtract(a, multiply(bq, transpose(bf, d, c), d, c, d));
      const hr = subtract(block(b, wide, 0, 0, d, c), multiply(bf, qfr, d, c, c));
      for (let i = 0; i < m; i++) {
        for (const { u, w, step, count } of runs[i]) {
          if (parameters[i].local < 0) continue;
          addProduct(viaF[i], hv, u * v, step * v, v, bf, w * c, step * c, c, count);
          addProduct(fToF[i], bf, u * c, step * c, c, bf, w * c, step * c, c, count);
          addProduct(toCrossed[i], hv, u * v, step * v, v, hr, w * c, step * c, c, count);
          addProduct(crossedBoth[i], hr, u * c, step * c, c, hr, w * c, step * c, c, count);
        }
      }
    }
    for (let i = 0; i < m; i++) {
      if (parameters[i].local < 0) continue;
      // through = a Wᵢ hv.
      const through = middle[i].fill(0, 0, d * v);
      for (const { u, w, step, count } of runs[i]) {
        for (let z = 0; z < count; z++) trace[i] += less[(u + z * step) * d + w + z * step];
        addProduct(twice[i], hv, u * v, step * v, v, hv, w * v, step * v, v, count, 1, true);
        addProduct(through, a, u * d, step * d, d, hv, w * v, step * v, v, count);
      }
      for (let j = 0; j <= i; j++) {
        if (parameters[j].local < 0) continue;
        for (const one of runs[j]) {
          const { u, w, step, count } = one;
          addProduct(thrice[j][i], hv, u * v, step * v, v, through, w * v, step * v, v, count, 1, i === j);
          for (const two of runs[i]) traces[i * m + j] += traceWithin(a, less, d, one, two);
        }
      }
    }
  }
  for (let i = 0; i < m; i++) {
    if (parameters[i].local < 0) continue;
    mirror(twice[i], v);
    mirror(thrice[i][i], v);
  }

  for (const [i, { local: at, rest: index, a: row, b: column }] of parameters.entries()) {
    if (at >= 0) continue;
    const { start, width, levels } = rest[index];
    place(runs[i], start, width, levels, row, column);
    for (const { u, w, step, count } of runs[i]) {
      for (let z = 0; z < count; z++) trace[i] += rr[(u + z * step) * c + w + z * step];
      addProduct(twice[i], rv, u * v, step * v, v, rv, w * v, step * v, v, count);
    }
  }
  const qf = fToF.map((each) => multiply(q, each, c, c, c));
  for (let i = 0; i < m; i++) {
    for (let j = 0; j <= i; j++) {
      const isLocal = [parameters[i].local >= 0, parameters[j].local >= 0];
      const out = thrice[j][i];
      if (isLocal[0] && isLocal[1]) {
        if (c > 0) {
          traces[i * m + j] += traceOfProduct(qf[i], qf[j], c);
          const joined = multiply(multiply(viaF[j], q, v, c, c), transpose(viaF[i], v, c), v, c, v);
          for (let z = 0; z < out.length; z++) out[z] -= joined[z];
        }
      } else if (isLocal[0] || isLocal[1]) {
        const [mine, other] = isLocal[0] ? [i, j] : [j, i];
        for (const { u, w, step, count } of runs[other]) {
          for (let z = 0; z < count * step; z += step) {
            traces[i * m + j] += crossedBoth[mine][(w + z) * c + u + z];
            for (let x = 0; x < v; x++) {
              for (let r = 0; r < v; r++) {
                const product = toCrossed[mine][x * c + u + z] * rv[(w + z) * v + r];
                out[other === i ? x * v + r : r * v + x] += product;
              }
            }
          }
        }
      } else {
        for (const one of runs[j]) {
          for (const two of runs[i]) {
            traces[i * m + j] += traceWithin(rr, rr, c, one, two);
            for (let z = 0; z < one.count; z++) {
              const x = one.u + z * one.step;
              const r = one.w + z * one.step;
              for (let g = 0; g < two.count; g++) {
                const factor = rr[r * c + two.u + g * two.step];
                addProduct(out, rv, x * v, 0, v, rv, (two.w + g * two.step) * v, 0, v, 1, factor);
              }
            }
          }
        }
      }
      traces[j * m + i] = traces[i * m + j];
      if (i !== j) thrice[i][j] = transpose(out, v, v);
    }
  }
  return { trace, traces, once, twice, thrice };
}

/** The parameters of a model in the order of theta: each term's lower triangle, column after column. */
export function parameterList({ local, rest }: Blocks): Parameter[] {
  const terms = [
    ...local.map(({ index, width }, at) => ({ index, width, local: at, rest: -1 })),
    ...rest.map(({ index, width }, at) => ({ index, width, local: -1, rest: at })),
  ].sort((one, two) => one.index - two.index);
  return terms.flatMap(({ width, local: at, rest: restAt }) => {
    const list: Parameter[] = [];
    for (let b = 0; b < width; b++) for (let a = b; a < width; a++) list.push({ local: at, rest: restAt, a, b });
    return list;
  });
}

/** Entries (u, w), (u + step, w + step), …: what a parameter multiplies, a level after the other. */
class Run {
  u = 0;
  w = 0;
  step = 0;
  count = 0;
}

/** Off the diagonal a parameter has two runs, one each way. */
function place(runs: readonly Run[], start: number, width: number, levels: number, a: number, b: number): void {
  for (let i = 0; i < runs.length; i++) {
    runs[i].u = start + (i === 0 ? a : b);
    runs[i].w = start + (i === 0 ? b : a);
    runs[i].step = width;
    runs[i].count = levels;
  }
}

/** The share of two runs in tr(W⁻¹ Wᵢ W⁻¹ Wⱼ), where W⁻¹ is `a` less something that takes `a` to `less`. */
function traceWithin(a: Float64Array, less: Float64Array, d: number, one: Run, two: Run): number {
  let sum = 0;
  for (let z = 0; z < one.count * one.step; z += one.step) {
    const column = one.u + z;
    const row = (one.w + z) * d;
    for (let g = 0; g < two.count * two.step; g += two.step) {
      const at = row + two.u + g;
      sum += a[(two.w + g) * d + column] * (2 * less[at] - a[at]);
    }
  }
  return sum;
}

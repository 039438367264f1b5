import type { Blocks } from './blocks.ts';
import { forwardSolve, inverseFromFactor } from './cholesky.ts';
import { block, multiply, subtract, traceOfProduct, transpose } from './dense.ts';
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
    for (const { term, index, width, start } of rest) {
      const whole = { start: [start], count: [term.levels.length], width };
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
  const entries = parameters.map(() => new Entries(2 * largest));
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
    for (let row = 0; row < d; row++) {
      for (let i = 0; i < d; i++) {
        const factor = y[row * d + i];
        if (factor === 0) continue;
        for (let j = 0; j < d; j++) a[i * d + j] -= factor * y[row * d + j];
        for (let j = 0; j < wide; j++) b[i * wide + j] -= factor * t[atU + row * wide + j];
      }
    }
    let hv: Float64Array = c === 0 ? b : block(b, wide, 0, c, d, v);
    let less: Float64Array = a;
    if (c > 0) {
      const bf = scaled(block(b, wide, 0, 0, d, c), d, c);
      hv = subtract(hv, multiply(bf, qfv, d, c, v));
      const bq = multiply(bf, q, d, c, c);
      less = subtract(a, multiply(bq, transpose(bf, d, c), d, c, d));
      const hr = subtract(block(b, wide, 0, 0, d, c), multiply(bf, qfr, d, c, c));
      for (const [i, parameter] of parameters.entries()) {
        if (parameter.local < 0) continue;
        fill(entries[i], parameter, local[parameter.local], h);
        const { u, w, length } = entries[i];
        for (let z = 0; z < length; z++) {
          addOuter(viaF[i], hv, u[z] * v, v, bf, w[z] * c, c);
          addOuter(fToF[i], bf, u[z] * c, c, bf, w[z] * c, c);
          addOuter(toCrossed[i], hv, u[z] * v, v, hr, w[z] * c, c);
          addOuter(crossedBoth[i], hr, u[z] * c, c, hr, w[z] * c, c);
        }
      }
    }
    for (let i = 0; i < m; i++) {
      const parameter = parameters[i];
      if (parameter.local < 0) continue;
      fill(entries[i], parameter, local[parameter.local], h);
      const { u, w, length } = entries[i];
      const through = middle[i].fill(0, 0, d * v);
      for (let z = 0; z < length; z++) {
        trace[i] += less[u[z] * d + w[z]];
        addOuter(twice[i], hv, u[z] * v, v, hv, w[z] * v, v);
        for (let row = 0; row < d; row++) {
          const factor = a[row * d + u[z]];
          for (let j = 0; j < v; j++) through[row * v + j] += factor * hv[w[z] * v + j];
        }
      }
      for (let j = 0; j <= i; j++) {
        if (parameters[j].local < 0) continue;
        const other = entries[j];
        let sum = 0;
        for (let z = 0; z < other.length; z++) {
          const x = other.u[z];
          const r = other.w[z];
          addOuter(thrice[j][i], hv, x * v, v, through, r * v, v);
          for (let g = 0; g < length; g++) sum += a[w[g] * d + x] * (2 * less[r * d + u[g]] - a[r * d + u[g]]);
        }
        traces[i * m + j] += sum;
      }
    }
  }

  for (const [i, parameter] of parameters.entries()) {
    if (parameter.local >= 0) continue;
    const term = rest[parameter.rest];
    entries[i] = new Entries(2 * term.term.levels.length);
    entries[i].fill(term.start, term.term.levels.length, term.width, parameter.a, parameter.b);
    const { u, w, length } = entries[i];
    for (let z = 0; z < length; z++) {
      trace[i] += rr[u[z] * c + w[z]];
      addOuter(twice[i], rv, u[z] * v, v, rv, w[z] * v, v);
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
        const { u, w, length } = entries[other];
        for (let z = 0; z < length; z++) {
          traces[i * m + j] += crossedBoth[mine][w[z] * c + u[z]];
          for (let x = 0; x < v; x++) {
            for (let r = 0; r < v; r++) {
              const product = toCrossed[mine][x * c + u[z]] * rv[w[z] * v + r];
              out[other === i ? x * v + r : r * v + x] += product;
            }
          }
        }
      } else {
        for (let z = 0; z < entries[j].length; z++) {
          const x = entries[j].u[z];
          const r = entries[j].w[z];
          for (let g = 0; g < entries[i].length; g++) {
            const factor = rr[r * c + entries[i].u[g]];
            traces[i * m + j] += rr[entries[i].w[g] * c + x] * factor;
            addOuter(out, rv, x * v, v, rv, entries[i].w[g] * v, v, factor);
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

class Entries {
  readonly u: Int32Array;
  readonly w: Int32Array;
  length = 0;

  constructor(most: number) {
    this.u = new Int32Array(most);
    this.w = new Int32Array(most);
  }

  fill(start: number, levels: number, width: number, a: number, b: number): void {
    this.length = 0;
    for (let level = 0, first = start; level < levels; level++, first += width) {
      this.u[this.length] = first + a;
      this.w[this.length++] = first + b;
      if (a === b) continue;
      this.u[this.length] = first + b;
      this.w[this.length++] = first + a;
    }
  }
}

function fill(entries: Entries, { a, b }: Parameter, term: Blocks['local'][number], h: number): void {
  entries.fill(term.start[h], term.count[h], term.width, a, b);
}

/** out += factor · x y', for a row x of one matrix and a row y of another. */
function addOuter(
  out: Float64Array,
  x: Float64Array,
  atX: number,
  lengthX: number,
  y: Float64Array,
  atY: number,
  lengthY: number,
  factor = 1,
): void {
  for (let i = 0; i < lengthX; i++) {
    const scale = factor * x[atX + i];
    for (let j = 0; j < lengthY; j++) out[i * lengthY + j] += scale * y[atY + j];
  }
}

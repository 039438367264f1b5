import type { Design, RandomTerm } from './design.ts';
import { dot, orthonormal } from './orthonormal.ts';

/**
 * A model as cross-products. Rows are read once, here; every later step works on clusters.
 *
 * A cluster is a level of the grouping factor within which most other factors are nested (a horse). The random
 * coefficients of a cluster are eliminated by themselves; what crosses clusters (a farrier) stays in one dense rest,
 * with the fixed effects and the response: `U = [crossed | X | y]`. `X` is an orthonormal basis of the model's columns
 * and `y` what least squares leaves of the response, so that large means and collinear columns cost no digits.
 */
export interface Blocks {
  readonly n: number;
  /** Fixed effects kept, and random coefficients that cross clusters. */
  readonly p: number;
  readonly crossed: number;
  readonly clusters: number;
  /** Random coefficients of each cluster, and where its matrices start in `zz` and `zu`. */
  readonly size: Int32Array;
  readonly zzStart: Int32Array;
  readonly zuStart: Int32Array;
  readonly zz: Float64Array;
  readonly zu: Float64Array;
  /** U'U, r by r with r = crossed + p + 1. */
  readonly uu: Float64Array;
  readonly local: readonly LocalTerm[];
  readonly rest: readonly RestTerm[];
  /** Where the parameters of each random term, in the order of the design, start in theta. */
  readonly thetaStart: readonly number[];
  readonly parameters: number;
  readonly basis: readonly Float64Array[];
  readonly r: Float64Array;
  readonly kept: readonly number[];
  readonly dropped: readonly number[];
  /** Coefficients of the basis in the least-squares fit that `y` is what is left of. */
  readonly leastSquares: Float64Array;
}

export interface LocalTerm {
  readonly term: RandomTerm;
  readonly index: number;
  readonly width: number;
  /** For each cluster, where this term's coefficients start in it and how many levels it has there. */
  readonly start: Int32Array;
  readonly count: Int32Array;
  /** For each level, its cluster and the place of its first coefficient in it. */
  readonly clusterOf: Int32Array;
  readonly placeOf: Int32Array;
}

export interface RestTerm {
  readonly term: RandomTerm;
  readonly index: number;
  readonly width: number;
  /** Where its coefficients start among the crossed ones. */
  readonly start: number;
}

export function blocks(model: Design): Blocks {
  const { n, random } = model;
  const { basis, r, kept, dropped } = orthonormal(model.terms.map(({ values }) => values));
  const p = basis.length;
  const leastSquares = Float64Array.from(basis, (direction) => dot(direction, model.y));
  const y = residual(model.y, basis, leastSquares);

  const { cluster, clusters, isLocal } = chooseClusters(random, n);
  const size = new Int32Array(clusters);
  const local: LocalTerm[] = [];
  const rest: RestTerm[] = [];
  const thetaStart: number[] = [];
  let parameters = 0;
  let crossed = 0;
  for (const [index, term] of random.entries()) {
    const width = term.coefficients.length;
    thetaStart.push(parameters);
    parameters += (width * (width + 1)) / 2;
    if (isLocal[index]) local.push(layOut(term, index, width, cluster, size));
    else {
      rest.push({ term, index, width, start: crossed });
      crossed += width * term.levels.length;
    }
  }

  const wide = crossed + p + 1;
  const zzStart = new Int32Array(clusters + 1);
  const zuStart = new Int32Array(clusters + 1);
  for (let h = 0; h < clusters; h++) {
    zzStart[h + 1] = zzStart[h] + size[h] * size[h];
    zuStart[h + 1] = zuStart[h] + size[h] * wide;
  }
  const zz = new Float64Array(zzStart[clusters]);
  const zu = new Float64Array(zuStart[clusters]);
  const uu = new Float64Array(wide * wide);
  addCrossProducts({
    n,
    cluster,
    local,
    rest,
    size,
    zzStart,
    zuStart,
    zz,
    zu,
    uu,
    crossed,
    wide,
    fixed: [...basis, y],
  });
  return {
    ...{ n, p, crossed, clusters, size, zzStart, zuStart, zz, zu, uu, local, rest, thetaStart, parameters },
    ...{ basis, r, kept, dropped, leastSquares },
  };
}

/** The same model with another response: only the products with `y` are made afresh. */
export function withResponse(model: Blocks, response: Float64Array): Blocks {
  const leastSquares = Float64Array.from(model.basis, (direction) => dot(direction, response));
  const y = residual(response, model.basis, leastSquares);
  const wide = model.crossed + model.p + 1;
  const last = wide - 1;
  const zu = model.zu.slice();
  const uu = model.uu.slice();
  for (let at = last; at < zu.length; at += wide) zu[at] = 0;
  for (const { term, width, clusterOf, placeOf } of model.local) {
    for (let i = 0; i < model.n; i++) {
      const level = term.codes[i];
      const base = model.zuStart[clusterOf[level]] + placeOf[level] * wide + last;
      for (let a = 0; a < width; a++) zu[base + a * wide] += (term.coefficients[a].values?.[i] ?? 1) * y[i];
    }
  }
  const column = new Float64Array(wide);
  for (const { term, width, start } of model.rest) {
    for (let i = 0; i < model.n; i++) {
      const at = start + term.codes[i] * width;
      for (let a = 0; a < width; a++) column[at + a] += (term.coefficients[a].values?.[i] ?? 1) * y[i];
    }
  }
  for (const [j, direction] of model.basis.entries()) column[model.crossed + j] = dot(direction, y);
  column[last] = dot(y, y);
  for (let j = 0; j < wide; j++) {
    uu[j * wide + last] = column[j];
    uu[last * wide + j] = column[j];
  }
  return { ...model, zu, uu, leastSquares };
}

function residual(y: Float64Array, basis: readonly Float64Array[], coefficients: Float64Array): Float64Array {
  const left = y.slice();
  for (const [j, direction] of basis.entries()) {
    for (let i = 0; i < left.length; i++) left[i] -= coefficients[j] * direction[i];
  }
  return left;
}

/** The factor that takes most coefficients out of the dense rest; among equals the one with more levels. */
function chooseClusters(random: readonly RandomTerm[], n: number) {
  let best = {
    covered: -1,
    levels: 0,
    isLocal: [] as boolean[],
    cluster: new Int32Array(n) as Int32Array,
    clusters: 0,
  };
  for (const candidate of random) {
    const isLocal = random.map((term) => isNested(term, candidate));
    const covered = random.reduce(
      (sum, term, k) => sum + (isLocal[k] ? term.levels.length * term.coefficients.length : 0),
      0,
    );
    const levels = candidate.levels.length;
    if (covered > best.covered || (covered === best.covered && levels > best.levels)) {
      best = { covered, levels, isLocal, cluster: candidate.codes, clusters: levels };
    }
  }
  return best;
}

function isNested(inner: RandomTerm, outer: RandomTerm): boolean {
  const home = new Int32Array(inner.levels.length).fill(-1);
  for (let i = 0; i < inner.codes.length; i++) {
    const level = inner.codes[i];
    if (home[level] < 0) home[level] = outer.codes[i];
    else if (home[level] !== outer.codes[i]) return false;
  }
  return true;
}

function layOut(term: RandomTerm, index: number, width: number, cluster: Int32Array, size: Int32Array): LocalTerm {
  const clusterOf = new Int32Array(term.levels.length);
  const placeOf = new Int32Array(term.levels.length);
  for (let i = 0; i < cluster.length; i++) clusterOf[term.codes[i]] = cluster[i];
  const start = size.slice();
  const count = new Int32Array(size.length);
  for (let level = 0; level < clusterOf.length; level++) {
    const h = clusterOf[level];
    placeOf[level] = size[h];
    size[h] += width;
    count[h]++;
  }
  return { term, index, width, start, count, clusterOf, placeOf };
}

function addCrossProducts(parts: {
  n: number;
  cluster: Int32Array;
  local: readonly LocalTerm[];
  rest: readonly RestTerm[];
  size: Int32Array;
  zzStart: Int32Array;
  zuStart: Int32Array;
  zz: Float64Array;
  zu: Float64Array;
  uu: Float64Array;
  crossed: number;
  wide: number;
  fixed: readonly Float64Array[];
}): void {
  const { n, cluster, local, rest, size, zzStart, zuStart, zz, zu, uu, crossed, wide, fixed } = parts;
  const localWidth = local.reduce((sum, { width }) => sum + width, 0);
  const crossedWidth = rest.reduce((sum, { width }) => sum + width, 0);
  const restWidth = crossedWidth + fixed.length;
  const place = new Int32Array(localWidth);
  const value = new Float64Array(localWidth);
  const column = new Int32Array(restWidth);
  const entry = new Float64Array(restWidth);
  for (let i = 0; i < n; i++) {
    const h = cluster[i];
    let z = 0;
    for (const { term, width, placeOf } of local) {
      const at = placeOf[term.codes[i]];
      for (let a = 0; a < width; a++, z++) {
        place[z] = at + a;
        value[z] = term.coefficients[a].values?.[i] ?? 1;
      }
    }
    let u = 0;
    for (const { term, width, start } of rest) {
      const at = start + term.codes[i] * width;
      for (let a = 0; a < width; a++, u++) {
        column[u] = at + a;
        entry[u] = term.coefficients[a].values?.[i] ?? 1;
      }
    }
    for (let j = 0; j < fixed.length; j++, u++) {
      column[u] = crossed + j;
      entry[u] = fixed[j][i];
    }
    for (let a = 0; a < localWidth; a++) {
      const zzRow = zzStart[h] + place[a] * size[h];
      for (let b = 0; b < localWidth; b++) zz[zzRow + place[b]] += value[a] * value[b];
      const zuRow = zuStart[h] + place[a] * wide;
      for (let b = 0; b < restWidth; b++) zu[zuRow + column[b]] += value[a] * entry[b];
    }
    for (let a = 0; a < crossedWidth; a++) {
      const uuRow = column[a] * wide;
      for (let b = a; b < restWidth; b++) uu[uuRow + column[b]] += entry[a] * entry[b];
    }
  }
  for (let i = 0; i < crossed; i++) for (let j = i + 1; j < wide; j++) uu[j * wide + i] = uu[i * wide + j];
  // The basis is orthonormal, and the response's remainder at right angles to it.
  const remainder = fixed[fixed.length - 1];
  for (let j = crossed; j < wide - 1; j++) uu[j * wide + j] = 1;
  uu[wide * wide - 1] = dot(remainder, remainder);
}

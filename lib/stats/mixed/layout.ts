import type { RandomTerm } from './design.ts';

/** A random term that is nested in the clusters. */
export interface LocalTerm {
  readonly index: number;
  readonly width: number;
  /** For each cluster, where this term's coefficients start in it and how many levels it has there. */
  readonly start: Int32Array;
  readonly count: Int32Array;
  /** For each level, its cluster and the place of its first coefficient in it. */
  readonly clusterOf: Int32Array;
  readonly placeOf: Int32Array;
}

/** A random term that crosses clusters: where its coefficients start among the crossed ones. */
export interface RestTerm {
  readonly index: number;
  readonly width: number;
  readonly start: number;
  readonly levels: number;
}

/** Where everything lies in the matrices of a model's clusters. */
export interface Layout {
  /** Random coefficients that cross clusters. */
  readonly crossed: number;
  readonly clusters: number;
  /** Random coefficients of each cluster, and where its matrices start in `zz` and `zu`. */
  readonly size: Int32Array;
  readonly zzStart: Int32Array;
  readonly zuStart: Int32Array;
  readonly local: readonly LocalTerm[];
  readonly rest: readonly RestTerm[];
  /** Where the parameters of each random term, in the order of the design, start in theta. */
  readonly thetaStart: readonly number[];
  readonly parameters: number;
}

/**
 * Lays out the random terms of a model.
 * @param terms  in the order of the design: coefficients of a level, levels, and where the term is nested in the clusters
 *   the cluster of each level
 * @param p  fixed effects
 */
export function layOut(
  terms: readonly { readonly width: number; readonly levels: number; readonly clusterOf?: Int32Array }[],
  clusters: number,
  p: number,
): Layout {
  const size = new Int32Array(clusters);
  const local: LocalTerm[] = [];
  const rest: RestTerm[] = [];
  const thetaStart: number[] = [];
  let parameters = 0;
  let crossed = 0;
  for (const [index, { width, levels, clusterOf }] of terms.entries()) {
    thetaStart.push(parameters);
    parameters += (width * (width + 1)) / 2;
    if (clusterOf) local.push({ index, width, ...placed(clusterOf, width, size) });
    else {
      rest.push({ index, width, start: crossed, levels });
      crossed += width * levels;
    }
  }
  const wide = crossed + p + 1;
  const zzStart = new Int32Array(clusters + 1);
  const zuStart = new Int32Array(clusters + 1);
  for (let h = 0; h < clusters; h++) {
    zzStart[h + 1] = zzStart[h] + size[h] * size[h];
    zuStart[h + 1] = zuStart[h] + size[h] * wide;
  }
  return { crossed, clusters, size, zzStart, zuStart, local, rest, thetaStart, parameters };
}

/** Adds a term's coefficients to the size of each cluster. */
function placed(clusterOf: Int32Array, width: number, size: Int32Array) {
  const placeOf = new Int32Array(clusterOf.length);
  const start = size.slice();
  const count = new Int32Array(size.length);
  for (let level = 0; level < clusterOf.length; level++) {
    const h = clusterOf[level];
    placeOf[level] = size[h];
    size[h] += width;
    count[h]++;
  }
  return { start, count, clusterOf, placeOf };
}

/** The factor that takes most coefficients out of the dense rest; among equals the one with more levels. */
export function chooseClusters(random: readonly RandomTerm[], n: number) {
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
  if (inner === outer) return true;
  const home = new Int32Array(inner.levels.length).fill(-1);
  for (let i = 0; i < inner.codes.length; i++) {
    const level = inner.codes[i];
    if (home[level] < 0) home[level] = outer.codes[i];
    else if (home[level] !== outer.codes[i]) return false;
  }
  return true;
}

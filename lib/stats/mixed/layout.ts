import type { RandomTerm } from './design.ts';

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
  /** For each row of the data, where the row of its first coefficient starts in `zu`. */
  readonly inZu: Int32Array;
}

export interface RestTerm {
  readonly term: RandomTerm;
  readonly index: number;
  readonly width: number;
  /** Where its coefficients start among the crossed ones, and where the first of each row of the data is. */
  readonly start: number;
  readonly columnOf: Int32Array;
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

export function layOut(term: RandomTerm, index: number, width: number, cluster: Int32Array, size: Int32Array) {
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

import { acrossClusters, addColumn, type RowLocalTerm, type RowRestTerm, withinClusters } from './crossProducts.ts';
import type { Design, RandomTerm } from './design.ts';
import { chooseClusters, type Layout, layOut } from './layout.ts';
import { dot, orthonormal, subtract } from './orthonormal.ts';

/**
 * A model as cross-products: all that the fit needs. They are made of rows here, and of sums in `blocksOfSums`.
 *
 * A cluster is a level of the grouping factor within which most other factors are nested (a horse). The random
 * coefficients of a cluster are eliminated by themselves; what crosses clusters (a farrier) stays in one dense rest,
 * with the fixed effects and the response: `U = [crossed | X | y]`. `X` is an orthonormal basis of the model's columns
 * and `y` what least squares leaves of the response, so that large means and collinear columns cost no digits.
 */
export interface Blocks extends Layout {
  readonly n: number;
  /** Fixed effects kept. */
  readonly p: number;
  readonly zz: Float64Array;
  readonly zu: Float64Array;
  /** U'U, r by r with r = crossed + p + 1. */
  readonly uu: Float64Array;
  /** The model's own columns are the basis times r. */
  readonly r: Float64Array;
  readonly kept: readonly number[];
  readonly dropped: readonly number[];
  /** Coefficients of the basis in the least-squares fit that `y` is what is left of. */
  readonly leastSquares: Float64Array;
}

/** Blocks with the rows they were made of. */
export interface RowBlocks extends Blocks {
  readonly local: readonly RowLocalTerm[];
  readonly rest: readonly RowRestTerm[];
  readonly basis: readonly Float64Array[];
}

/** Rows are read once, here; every later step works on clusters. */
export function blocks(model: Design): RowBlocks {
  const { n, random } = model;
  const { basis, r, kept, dropped } = orthonormal(model.terms.map(({ values }) => values));
  const p = basis.length;
  const leastSquares = Float64Array.from(basis, (direction) => dot(direction, model.y));
  const y = residual(model.y, basis, leastSquares);

  const { cluster, clusters, isLocal } = chooseClusters(random, n);
  const layout = layOut(
    random.map((term, index) => ({
      width: term.coefficients.length,
      levels: term.levels.length,
      clusterOf: isLocal[index] ? clustersOf(term, cluster) : undefined,
    })),
    clusters,
    p,
  );
  const { crossed, size, zzStart, zuStart } = layout;
  const wide = crossed + p + 1;
  const local = layout.local.map((each) => {
    const term = random[each.index];
    const start = each.clusterOf.map((h, level) => zuStart[h] + each.placeOf[level] * wide);
    return { ...each, term, inZu: term.codes.map((code) => start[code]) };
  });
  const rest = layout.rest.map((each) => {
    const term = random[each.index];
    return { ...each, term, columnOf: term.codes.map((code) => each.start + code * each.width) };
  });
  const zu = new Float64Array(zuStart[clusters]);
  const uu = new Float64Array(wide * wide);
  const zz = withinClusters(local, size, zzStart, n);
  acrossClusters({ local, rest, zu, uu, wide });
  // The basis is orthonormal, and the response's remainder at right angles to it.
  for (const [j, column] of [...basis, y].entries()) {
    addColumn({ local, rest, zu, uu, wide }, crossed + j, column);
    uu[(crossed + j) * (wide + 1)] = j < p ? 1 : dot(y, y);
  }
  return { ...layout, n, p, zz, zu, uu, local, rest, basis, r, kept, dropped, leastSquares };
}

/** The same model with another response: only the products with `y` are made afresh. */
export function withResponse(model: RowBlocks, response: Float64Array): RowBlocks {
  const leastSquares = Float64Array.from(model.basis, (direction) => dot(direction, response));
  const y = residual(response, model.basis, leastSquares);
  const wide = model.crossed + model.p + 1;
  const last = wide - 1;
  const zu = model.zu.slice();
  const uu = model.uu.slice();
  for (let at = last; at < zu.length; at += wide) zu[at] = 0;
  addColumn({ ...model, zu, uu, wide }, last, y);
  uu[wide * wide - 1] = dot(y, y);
  return { ...model, zu, uu, leastSquares };
}

function clustersOf({ codes, levels }: RandomTerm, cluster: Int32Array): Int32Array {
  const clusterOf = new Int32Array(levels.length);
  for (let i = 0; i < cluster.length; i++) clusterOf[codes[i]] = cluster[i];
  return clusterOf;
}

function residual(y: Float64Array, basis: readonly Float64Array[], coefficients: Float64Array): Float64Array {
  const left = y.slice();
  for (const [j, direction] of basis.entries()) subtract(left, coefficients[j], direction);
  return left;
}

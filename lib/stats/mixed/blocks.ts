import { acrossClusters, addColumn, withinClusters } from './crossProducts.ts';
import type { Design } from './design.ts';
import { chooseClusters, type LocalTerm, layOut, type RestTerm } from './layout.ts';
import { dot, orthonormal, subtract } from './orthonormal.ts';

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

export function blocks(model: Design): Blocks {
  const { n, random } = model;
  const { basis, r, kept, dropped } = orthonormal(model.terms.map(({ values }) => values));
  const p = basis.length;
  const leastSquares = Float64Array.from(basis, (direction) => dot(direction, model.y));
  const y = residual(model.y, basis, leastSquares);

  const { cluster, clusters, isLocal } = chooseClusters(random, n);
  const size = new Int32Array(clusters);
  const placed: Omit<LocalTerm, 'inZu'>[] = [];
  const rest: RestTerm[] = [];
  const thetaStart: number[] = [];
  let parameters = 0;
  let crossed = 0;
  for (const [index, term] of random.entries()) {
    const width = term.coefficients.length;
    thetaStart.push(parameters);
    parameters += (width * (width + 1)) / 2;
    if (isLocal[index]) placed.push(layOut(term, index, width, cluster, size));
    else {
      rest.push({ term, index, width, start: crossed, columnOf: term.codes.map((code) => crossed + code * width) });
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
  const local = placed.map((each) => {
    const start = each.clusterOf.map((h, level) => zuStart[h] + each.placeOf[level] * wide);
    return { ...each, inZu: each.term.codes.map((code) => start[code]) };
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
  addColumn({ ...model, zu, uu, wide }, last, y);
  uu[wide * wide - 1] = dot(y, y);
  return { ...model, zu, uu, leastSquares };
}

function residual(y: Float64Array, basis: readonly Float64Array[], coefficients: Float64Array): Float64Array {
  const left = y.slice();
  for (const [j, direction] of basis.entries()) subtract(left, coefficients[j], direction);
  return left;
}

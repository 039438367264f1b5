import type { ExactSums } from '../exactSums.ts';
import { TOLERANCE } from './orthonormal.ts';
import { pair } from './sumStore.ts';

/** Binary places that are worked with, far more than a double's 53 and the 48 that the least allowed angle costs. */
const PLACES = 256n;
const ONE = 2 ** 256;

/** The orthonormal basis that columns would have, without the columns. */
export interface BasisOfProducts {
  /** Upper triangle of p by p, row after row: the columns kept are the basis times it. */
  readonly r: Float64Array;
  readonly kept: readonly number[];
  readonly dropped: readonly number[];
  /** Coefficients of the basis in the least-squares fit of the last column, and the squares of what is left of that. */
  readonly leastSquares: Float64Array;
  readonly residualSquares: number;
}

/**
 * What `orthonormal` makes of columns, from their products with each other alone: by elimination in whole numbers, as products
 * squared in doubles would cost half of the digits.
 * @param products  of columns a and b at `pair(a, b)`; the response is the last of `count`
 * @param lengths  a column is left out when less than `TOLERANCE` of its length is left; these may be longer than the columns
 */
export function orthonormalOfProducts(products: ExactSums, count: number, lengths: ArrayLike<number>): BasisOfProducts {
  // Each column over a power of 2 near its length, so that all have the same places.
  const exponents = Array.from({ length: count }, (_, j) =>
    Math.ceil((bits(products.whole(pair(j, j))) + 32 * products.lowest) / 2),
  );
  const entry = (a: number, b: number) =>
    shifted(products.whole(pair(a, b)), Number(PLACES) + 32 * products.lowest - exponents[a] - exponents[b]);
  const kept: number[] = [];
  const dropped: number[] = [];
  const pivots: bigint[] = [];
  /** For each column that was kept, its shares along the basis, unscaled and over the pivot. */
  const rows: { along: bigint[]; shares: bigint[] }[] = [];
  const reduced = (j: number) => {
    const along: bigint[] = [];
    const shares: bigint[] = [];
    let left = entry(j, j);
    for (const [k, row] of rows.entries()) {
      let sum = entry(j, kept[k]);
      for (let m = 0; m < k; m++) sum -= (row.shares[m] * along[m]) >> PLACES;
      along.push(sum);
      shares.push((sum << PLACES) / pivots[k]);
      left -= (shares[k] * sum) >> PLACES;
    }
    return { along, shares, left };
  };
  for (let j = 0; j < count - 1; j++) {
    const { along, shares, left } = reduced(j);
    if (!(Number(left) / ONE > (TOLERANCE * lengths[j] * 2 ** -exponents[j]) ** 2)) dropped.push(j);
    else {
      kept.push(j);
      pivots.push(left);
      rows.push({ along, shares });
    }
  }
  const p = kept.length;
  const units = pivots.map((pivot) => Math.sqrt(Number(pivot) / ONE));
  const coordinates = (along: readonly bigint[], j: number) =>
    along.map((value, k) => (Number(value) / ONE / units[k]) * 2 ** exponents[j]);
  const r = new Float64Array(p * p);
  for (const [j, { along }] of rows.entries()) {
    for (const [k, value] of coordinates(along, kept[j]).entries()) r[k * p + j] = value;
    r[j * p + j] = units[j] * 2 ** exponents[kept[j]];
  }
  const { along, left } = reduced(count - 1);
  return {
    ...{ r, kept, dropped },
    leastSquares: Float64Array.from(coordinates(along, count - 1)),
    residualSquares: Math.max(0, (Number(left) / ONE) * 4 ** exponents[count - 1]),
  };
}

/** How many binary places a whole number has. */
function bits(value: bigint): number {
  return value === 0n ? 0 : value.toString(2).length;
}

function shifted(value: bigint, places: number): bigint {
  return places >= 0 ? value << BigInt(places) : value >> BigInt(-places);
}

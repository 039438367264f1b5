/** An orthonormal basis of a model's columns, `X = Q R`, and which columns added nothing to those before them. */
export interface Orthonormal {
  /** Columns of unit length, each of n values. */
  readonly basis: readonly Float64Array[];
  /** Upper triangle of p by p, row after row. */
  readonly r: Float64Array;
  readonly kept: readonly number[];
  readonly dropped: readonly number[];
}

/** A column counts as a combination of those before it when less than this share of its length is left. */
const TOLERANCE = 1e-7;

/** Gram–Schmidt with every column orthogonalised twice, in the order given: "twice is enough" (Giraud & Langou 2005). */
export function orthonormal(columns: readonly Float64Array[]): Orthonormal {
  const basis: Float64Array[] = [];
  const coefficients: number[][] = [];
  const kept: number[] = [];
  const dropped: number[] = [];
  for (const [index, column] of columns.entries()) {
    const rest = column.slice();
    const row = new Array<number>(basis.length).fill(0);
    const length = Math.sqrt(dot(column, column));
    for (let pass = 0; pass < 2; pass++) {
      for (const [k, direction] of basis.entries()) {
        const along = dot(direction, rest);
        row[k] += along;
        for (let i = 0; i < rest.length; i++) rest[i] -= along * direction[i];
      }
    }
    const left = Math.sqrt(dot(rest, rest));
    if (left <= TOLERANCE * length) {
      dropped.push(index);
      continue;
    }
    for (let i = 0; i < rest.length; i++) rest[i] /= left;
    basis.push(rest);
    coefficients.push([...row, left]);
    kept.push(index);
  }
  const p = basis.length;
  const r = new Float64Array(p * p);
  for (let j = 0; j < p; j++) for (let i = 0; i <= j; i++) r[i * p + j] = coefficients[j][i];
  return { basis, r, kept, dropped };
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

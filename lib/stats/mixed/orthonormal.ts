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
export const TOLERANCE = 1e-7;

/** A column that keeps at least this share of its length has lost at most one digit, and needs no second pass. */
const ENOUGH = 0.1;

/**
 * Gram–Schmidt in the order given, twice for a column that loses most of its length: "twice is enough" (Parlett 1998, The
 * Symmetric Eigenvalue Problem, section 6.9).
 */
export function orthonormal(columns: readonly Float64Array[]): Orthonormal {
  const basis: Float64Array[] = [];
  const coefficients: number[][] = [];
  const kept: number[] = [];
  const dropped: number[] = [];
  for (const [index, column] of columns.entries()) {
    const rest = column.slice();
    const row = new Array<number>(basis.length).fill(0);
    const length = Math.sqrt(dot(column, column));
    let left = 0;
    for (let pass = 0; pass < 2 && left < ENOUGH * length; pass++) {
      for (const [k, direction] of basis.entries()) {
        const along = dot(direction, rest);
        row[k] += along;
        subtract(rest, along, direction);
      }
      left = Math.sqrt(dot(rest, rest));
    }
    if (!(left > TOLERANCE * length)) {
      dropped.push(index);
      continue;
    }
    const unit = 1 / left;
    for (let i = 0; i < rest.length; i++) rest[i] *= unit;
    basis.push(rest);
    coefficients.push([...row, left]);
    kept.push(index);
  }
  const p = basis.length;
  const r = new Float64Array(p * p);
  for (let j = 0; j < p; j++) for (let i = 0; i <= j; i++) r[i * p + j] = coefficients[j][i];
  return { basis, r, kept, dropped };
}

/** In four sums, as each addition otherwise waits for the one before. */
export function dot(a: Float64Array, b: Float64Array): number {
  const whole = a.length - (a.length % 4);
  let [first, second, third, fourth] = [0, 0, 0, 0];
  for (let i = 0; i < whole; i += 4) {
    first += a[i] * b[i];
    second += a[i + 1] * b[i + 1];
    third += a[i + 2] * b[i + 2];
    fourth += a[i + 3] * b[i + 3];
  }
  for (let i = whole; i < a.length; i++) first += a[i] * b[i];
  return first + second + (third + fourth);
}

/** a -= factor b. */
export function subtract(a: Float64Array, factor: number, b: Float64Array): void {
  for (let i = 0; i < a.length; i++) a[i] -= factor * b[i];
}

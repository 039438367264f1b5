/** The orthogonal decomposition of some columns, and what it is good for. */
export interface Decomposition {
  /** The columns that are kept, and those that depend on kept ones before them. */
  readonly kept: readonly number[];
  readonly dropped: readonly number[];
  /** The coefficients of the kept columns that come nearest to `y`. */
  solve(y: Float64Array): Float64Array;
  /** The inverse of XᵀX over the kept columns, row by row. */
  inverseCrossProduct(): Float64Array[];
}

/**
 * Least squares by Householder reflections, which lose no digit to the scale of a column's unit.
 * @param columns columns of one length
 * @param tolerance a column is dropped where the columns before it leave less than this share of its length
 * @source Golub & Van Loan 2013, Matrix Computations, 4th edition, 5.2.2
 */
export function householder(columns: readonly Float64Array[], tolerance: number): Decomposition {
  const rows = columns.length === 0 ? 0 : columns[0].length;
  const kept: number[] = [];
  const dropped: number[] = [];
  const reflections: Float64Array[] = [];
  const upper: Float64Array[] = [];
  columns.forEach((column, index) => {
    const work = column.slice();
    reflections.forEach((reflection, k) => {
      reflect(work, reflection, k);
    });
    const rank = kept.length;
    const left = norm(work, rank);
    if (!(left > tolerance * norm(column, 0))) {
      dropped.push(index);
      return;
    }
    const reflection = work.slice();
    reflection[rank] += reflection[rank] < 0 ? -left : left;
    const size = norm(reflection, rank);
    for (let i = rank; i < rows; i++) reflection[i] /= size;
    reflections.push(reflection);
    const top = work.slice(0, rank + 1);
    top[rank] = work[rank] < 0 ? left : -left;
    upper.push(top);
    kept.push(index);
  });

  /** Solves the triangle against `right`, in place. */
  const backSubstitute = (right: Float64Array) => {
    for (let c = kept.length - 1; c >= 0; c--) {
      right[c] /= upper[c][c];
      for (let r = 0; r < c; r++) right[r] -= upper[c][r] * right[c];
    }
    return right;
  };
  return {
    kept,
    dropped,
    solve(y) {
      const turned = y.slice();
      reflections.forEach((reflection, k) => {
        reflect(turned, reflection, k);
      });
      return backSubstitute(turned.slice(0, kept.length));
    },
    inverseCrossProduct() {
      // The columns of the triangle's inverse; their products are the inverse of XᵀX.
      const inverse = kept.map((_, c) => {
        const unit = new Float64Array(kept.length);
        unit[c] = 1;
        return backSubstitute(unit);
      });
      return kept.map((_, a) =>
        Float64Array.from(kept, (_, b) => {
          let sum = 0;
          for (const column of inverse) sum += column[a] * column[b];
          return sum;
        }),
      );
    },
  };
}

function norm(values: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < values.length; i++) sum += values[i] * values[i];
  return Math.sqrt(sum);
}

/** Mirrors `values` from place `from` on in the plane at right angles to `reflection`, of unit length. */
function reflect(values: Float64Array, reflection: Float64Array, from: number): void {
  let along = 0;
  for (let i = from; i < values.length; i++) along += reflection[i] * values[i];
  for (let i = from; i < values.length; i++) values[i] -= 2 * along * reflection[i];
}

/** Small dense matrices, row after row. */

/** A B for A rows by inner, B inner by columns. */
export function multiply(a: Float64Array, b: Float64Array, rows: number, inner: number, columns: number): Float64Array {
  const out = new Float64Array(rows * columns);
  for (let i = 0; i < rows; i++) {
    for (let k = 0; k < inner; k++) {
      const factor = a[i * inner + k];
      if (factor === 0) continue;
      for (let j = 0; j < columns; j++) out[i * columns + j] += factor * b[k * columns + j];
    }
  }
  return out;
}

/**
 * out += factor · X'Y for `count` rows of `widthX` and `widthY` numbers, from `atX` and `atY` on, a step from row to row.
 * @param lower whether only the lower triangle is wanted, where the product is symmetric
 */
export function addProduct(
  out: Float64Array,
  x: Float64Array,
  atX: number,
  stepX: number,
  widthX: number,
  y: Float64Array,
  atY: number,
  stepY: number,
  widthY: number,
  count: number,
  factor = 1,
  lower = false,
): void {
  // Two rows at a time, so that `out` is read and written half as often.
  for (let z = 0; z < count; z += 2, atX += 2 * stepX, atY += 2 * stepY) {
    const paired = z + 1 < count;
    const next = paired ? atY + stepY : atY;
    for (let i = 0; i < widthX; i++) {
      const one = factor * x[atX + i];
      const two = paired ? factor * x[atX + stepX + i] : 0;
      if (one === 0 && two === 0) continue;
      const row = i * widthY;
      const end = lower ? i + 1 : widthY;
      for (let j = 0; j < end; j++) out[row + j] += one * y[atY + j] + two * y[next + j];
    }
  }
}

/** A lower triangle made whole, in place. */
export function mirror(lower: Float64Array, n: number): void {
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) lower[i * n + j] = lower[j * n + i];
}

export function transpose(a: Float64Array, rows: number, columns: number): Float64Array {
  const out = new Float64Array(a.length);
  for (let i = 0; i < rows; i++) for (let j = 0; j < columns; j++) out[j * rows + i] = a[i * columns + j];
  return out;
}

/** tr(A B) for square matrices. */
export function traceOfProduct(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) sum += a[i * n + j] * b[j * n + i];
  return sum;
}

/** The block of a matrix with `stride` columns that starts at (row, column). */
export function block(
  a: Float64Array,
  stride: number,
  row: number,
  column: number,
  rows: number,
  columns: number,
): Float64Array {
  const out = new Float64Array(rows * columns);
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) out[i * columns + j] = a[(row + i) * stride + column + j];
  }
  return out;
}

export function subtract(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, i) => value - b[i]);
}

/** x'A y. */
export function bilinear(x: Float64Array, a: Float64Array, y: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) {
    let row = 0;
    for (let j = 0; j < y.length; j++) row += a[i * y.length + j] * y[j];
    sum += x[i] * row;
  }
  return sum;
}

/** Eigenvalues and eigenvectors (as columns) of a symmetric matrix by Jacobi rotations (Golub & Van Loan 2013, 8.5). */
export function symmetricEigen(matrix: Float64Array, n: number): { values: Float64Array; vectors: Float64Array } {
  const a = matrix.slice();
  const vectors = new Float64Array(n * n);
  for (let i = 0; i < n; i++) vectors[i * n + i] = 1;
  for (let sweep = 0; sweep < 60; sweep++) {
    let off = 0;
    let on = 0;
    for (let i = 0; i < n; i++) {
      on += a[i * n + i] ** 2;
      for (let j = 0; j < i; j++) off += a[i * n + j] ** 2;
    }
    if (off <= 1e-32 * on) break;
    for (let p = 0; p < n; p++) {
      for (let q = p + 1; q < n; q++) {
        const apq = a[p * n + q];
        if (apq === 0) continue;
        const theta = (a[q * n + q] - a[p * n + p]) / (2 * apq);
        const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
        const c = 1 / Math.hypot(t, 1);
        const s = t * c;
        for (let k = 0; k < n; k++) {
          const x = a[k * n + p];
          const y = a[k * n + q];
          a[k * n + p] = c * x - s * y;
          a[k * n + q] = s * x + c * y;
        }
        for (let k = 0; k < n; k++) {
          const x = a[p * n + k];
          const y = a[q * n + k];
          a[p * n + k] = c * x - s * y;
          a[q * n + k] = s * x + c * y;
        }
        for (let k = 0; k < n; k++) {
          const x = vectors[k * n + p];
          const y = vectors[k * n + q];
          vectors[k * n + p] = c * x - s * y;
          vectors[k * n + q] = s * x + c * y;
        }
      }
    }
  }
  return { values: Float64Array.from({ length: n }, (_, i) => a[i * n + i]), vectors };
}

/** V f(values) V'. */
export function fromEigen(values: Float64Array, vectors: Float64Array, f: (value: number) => number): Float64Array {
  const n = values.length;
  const scaled = vectors.map((value, at) => value * f(values[at % n]));
  return multiply(scaled, transpose(vectors, n, n), n, n, n);
}

/** The inverse of a symmetric matrix, with directions in which the matrix is flat (a variance at zero) left out. */
export function pseudoInverse(matrix: Float64Array, n: number): Float64Array {
  // Scaled to a unit diagonal first, as theta and the residual variance may differ by many orders of magnitude.
  const scale = Float64Array.from({ length: n }, (_, i) => 1 / Math.sqrt(Math.abs(matrix[i * (n + 1)])) || 0).map(
    (each) => (Number.isFinite(each) ? each : 0),
  );
  const scaled = matrix.map((value, at) => value * scale[(at / n) | 0] * scale[at % n]);
  const { values, vectors } = symmetricEigen(scaled, n);
  const inverse = fromEigen(values, vectors, (value) => (Math.abs(value) > 1e-9 ? 1 / value : 0));
  return inverse.map((value, at) => value * scale[(at / n) | 0] * scale[at % n]);
}

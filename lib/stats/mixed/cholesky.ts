/**
 * Lower Cholesky factor of a symmetric matrix, in place; the upper triangle is left as it was.
 * @param m n by n, row after row, starting at `at`
 * @returns the log determinant, or NaN where the matrix isn't positive definite
 */
export function cholesky(m: Float64Array, n: number, at = 0): number {
  let logDeterminant = 0;
  for (let j = 0; j < n; j++) {
    const rowJ = at + j * n;
    let pivot = m[rowJ + j];
    for (let k = 0; k < j; k++) pivot -= m[rowJ + k] * m[rowJ + k];
    if (!(pivot > 0)) return Number.NaN;
    const root = Math.sqrt(pivot);
    m[rowJ + j] = root;
    logDeterminant += 2 * Math.log(root);
    for (let i = j + 1; i < n; i++) {
      const rowI = at + i * n;
      let sum = m[rowI + j];
      for (let k = 0; k < j; k++) sum -= m[rowI + k] * m[rowJ + k];
      m[rowI + j] = sum / root;
    }
  }
  return logDeterminant;
}

/** Solves L X = B for X in place: L lower, n by n at `atL`; B n by `wide` at `atB`, row after row. */
export function forwardSolve(
  l: Float64Array,
  n: number,
  atL: number,
  b: Float64Array,
  wide: number,
  atB: number,
): void {
  for (let i = 0; i < n; i++) {
    const rowL = atL + i * n;
    const rowB = atB + i * wide;
    for (let k = 0; k < i; k++) {
      const factor = l[rowL + k];
      if (factor === 0) continue;
      const other = atB + k * wide;
      for (let c = 0; c < wide; c++) b[rowB + c] -= factor * b[other + c];
    }
    const pivot = l[rowL + i];
    for (let c = 0; c < wide; c++) b[rowB + c] /= pivot;
  }
}

/** The inverse of L L' for the leading `n` rows of a lower factor whose rows are `stride` long. */
export function inverseFromFactor(l: Float64Array, n: number, stride = n): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) inverse[i * n + i] = 1;
  const lower = new Float64Array(n * n);
  for (let i = 0; i < n; i++) for (let j = 0; j <= i; j++) lower[i * n + j] = l[i * stride + j];
  forwardSolve(lower, n, 0, inverse, n, 0);
  const product = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = 0;
      for (let k = i; k < n; k++) sum += inverse[k * n + i] * inverse[k * n + j];
      product[i * n + j] = sum;
      product[j * n + i] = sum;
    }
  }
  return product;
}

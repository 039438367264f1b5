/** One equation of a least-squares problem: the slopes of the unknowns and the value they should make up. */
export interface Equation {
  readonly slopes: readonly number[];
  readonly value: number;
}

/**
 * The unknowns that make up the values with the least sum of squares, by the normal equations: for a few unknowns of
 * about the same size, as in one step of a fit.
 * @param damping a share of each diagonal element that is added to it (Marquardt 1963)
 * @returns the unknowns, or undefined where the equations don't settle them
 */
export function solveNormal(equations: readonly Equation[], damping = 0): number[] | undefined {
  const size = equations.length === 0 ? 0 : equations[0].slopes.length;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  for (const { slopes, value } of equations)
    for (let r = 0; r < size; r++) {
      right[r] += slopes[r] * value;
      for (let c = 0; c <= r; c++) matrix[r][c] += slopes[r] * slopes[c];
    }
  for (let r = 0; r < size; r++) matrix[r][r] *= 1 + damping;
  return solvePositive(matrix, right);
}

/**
 * Solves a symmetric positive definite system by Cholesky's decomposition.
 * @param matrix its lower triangle is read and overwritten
 * @param right the right-hand side, overwritten
 * @returns the solution, or undefined where the matrix is not positive definite to 12 digits
 */
export function solvePositive(matrix: number[][], right: number[]): number[] | undefined {
  const size = right.length;
  for (let c = 0; c < size; c++) {
    const whole = matrix[c][c];
    for (let k = 0; k < c; k++) matrix[c][c] -= matrix[c][k] ** 2;
    if (!(matrix[c][c] > 1e-12 * whole)) return undefined;
    matrix[c][c] = Math.sqrt(matrix[c][c]);
    for (let r = c + 1; r < size; r++) {
      for (let k = 0; k < c; k++) matrix[r][c] -= matrix[r][k] * matrix[c][k];
      matrix[r][c] /= matrix[c][c];
    }
  }
  for (let r = 0; r < size; r++) {
    for (let k = 0; k < r; k++) right[r] -= matrix[r][k] * right[k];
    right[r] /= matrix[r][r];
  }
  for (let r = size - 1; r >= 0; r--) {
    for (let k = r + 1; k < size; k++) right[r] -= matrix[k][r] * right[k];
    right[r] /= matrix[r][r];
  }
  return right;
}

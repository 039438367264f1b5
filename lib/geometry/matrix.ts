/** Three rows of three: a map of the plane onto itself, for points written as (x, y, 1). */
export type Matrix = readonly [Row, Row, Row];
export type Row = readonly [number, number, number];

/** First `b`, then `a`. */
export function product(a: Matrix, b: Matrix): Matrix {
  return rows((r, c) => a[r][0] * b[0][c] + a[r][1] * b[1][c] + a[r][2] * b[2][c]);
}

/** The map that undoes a map, NaN throughout where none does. */
export function inverse(m: Matrix): Matrix {
  const cofactor = (r: number, c: number) => {
    const [r1, r2, c1, c2] = [(r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3];
    return m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1];
  };
  const determinant = m[0][0] * cofactor(0, 0) + m[0][1] * cofactor(0, 1) + m[0][2] * cofactor(0, 2);
  return rows((r, c) => (determinant === 0 ? NaN : cofactor(c, r) / determinant));
}

/** A matrix from what stands at each row and column. */
export function rows(at: (row: number, column: number) => number): Matrix {
  const row = (r: number): Row => [at(r, 0), at(r, 1), at(r, 2)];
  return [row(0), row(1), row(2)];
}

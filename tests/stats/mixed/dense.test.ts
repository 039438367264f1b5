import { describe, expect, it } from 'vitest';
import {
  addProduct,
  bilinear,
  block,
  fromEigen,
  mirror,
  multiply,
  pseudoInverse,
  symmetricEigen,
  traceOfProduct,
  transpose,
} from '../../../lib/stats/mixed/dense.ts';

const of = (...numbers: number[]) => Float64Array.of(...numbers);
const near = (found: ArrayLike<number>, expected: readonly number[], digits = 12) => {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries()) expect(found[i]).toBeCloseTo(value, digits);
};

describe('small matrices, row after row', () => {
  it('multiply, transpose and take blocks', () => {
    // (1 0 2; 0 3 4) times (1 2; 3 4; 5 6) is (11 14; 29 36).
    expect([...multiply(of(1, 0, 2, 0, 3, 4), of(1, 2, 3, 4, 5, 6), 2, 3, 2)]).toEqual([11, 14, 29, 36]);
    expect([...transpose(of(1, 2, 3, 4, 5, 6), 2, 3)]).toEqual([1, 4, 2, 5, 3, 6]);
    expect([...block(of(1, 2, 3, 4, 5, 6, 7, 8, 9), 3, 1, 1, 2, 2)]).toEqual([5, 6, 8, 9]);
  });
  it('give the trace of a product and a bilinear form', () => {
    // (1 2; 3 4)(5 6; 7 8) has 19 and 50 on its diagonal.
    expect(traceOfProduct(of(1, 2, 3, 4), of(5, 6, 7, 8), 2)).toBe(69);
    // (1 2)(1 2 3; 4 5 6) is (9 12 15); times (1 0 2) it is 39.
    expect(bilinear(of(1, 2), of(1, 2, 3, 4, 5, 6), of(1, 0, 2))).toBe(39);
  });
});

describe('addProduct', () => {
  // Rows (1 2), (3 4), (5 6) and (1 0 1), (0 1 1), (2 0 0): X'Y is (11 3 4; 14 4 6).
  const x = of(1, 2, 3, 4, 5, 6);
  const y = of(1, 0, 1, 0, 1, 1, 2, 0, 0);
  it("adds X'Y, an odd row at the end too", () => {
    const out = of(1, 1, 1, 1, 1, 1);
    addProduct(out, x, 0, 2, 2, y, 0, 3, 3, 3);
    expect([...out]).toEqual([12, 4, 5, 15, 5, 7]);
  });
  it('starts where it is told, leaves rows out by its step, and multiplies', () => {
    const out = new Float64Array(6);
    addProduct(out, x, 0, 4, 2, y, 0, 6, 3, 2, -1);
    // Rows 1 and 3: (1·1 + 5·2, 0, 1) and (2·1 + 6·2, 0, 2).
    expect([...out].map((each) => each + 0)).toEqual([-11, 0, -1, -14, 0, -2]);
    const later = new Float64Array(6);
    addProduct(later, x, 2, 2, 2, y, 3, 3, 3, 1);
    expect([...later]).toEqual([0, 3, 3, 0, 4, 4]);
  });
  it('leaves the upper triangle alone where the lower will do, and mirror makes it whole', () => {
    // X'X of the rows above is (35 44; 44 56).
    const out = new Float64Array(4);
    addProduct(out, x, 0, 2, 2, x, 0, 2, 2, 3, 1, true);
    expect([...out]).toEqual([35, 0, 44, 56]);
    mirror(out, 2);
    expect([...out]).toEqual([35, 44, 44, 56]);
  });
});

describe('symmetric matrices', () => {
  it('have eigenvalues whose vectors put them together again', () => {
    // (2 1; 1 2) stretches (1, -1) by 1 and (1, 1) by 3.
    const { values, vectors } = symmetricEigen(of(2, 1, 1, 2), 2);
    near([...values].sort(), [1, 3]);
    near(
      fromEigen(values, vectors, (value) => value),
      [2, 1, 1, 2],
    );
    near(
      fromEigen(values, vectors, (value) => value * value),
      [5, 4, 4, 5],
    );
  });
  it('of three rows too: one whose values are 2 and 2 ± √2', () => {
    const matrix = of(2, -1, 0, -1, 2, -1, 0, -1, 2);
    const { values, vectors } = symmetricEigen(matrix, 3);
    near([...values].sort(), [2 - Math.SQRT2, 2, 2 + Math.SQRT2]);
    near(
      fromEigen(values, vectors, (value) => value),
      [...matrix],
    );
    near(multiply(transpose(vectors, 3, 3), vectors, 3, 3, 3), [1, 0, 0, 0, 1, 0, 0, 0, 1]);
  });
});

describe('pseudoInverse', () => {
  it('is the inverse where there is one', () => {
    near(pseudoInverse(of(2, 1, 1, 2), 2), [2 / 3, -1 / 3, -1 / 3, 2 / 3]);
  });
  it('leaves out what is flat', () => {
    near(pseudoInverse(of(4, 0, 0, 0), 2), [0.25, 0, 0, 0]);
    // (1 1; 1 1) stretches (1, 1) by 2 and nothing else.
    near(pseudoInverse(of(1, 1, 1, 1), 2), [0.25, 0.25, 0.25, 0.25]);
  });
  it('takes rows that differ by many orders of magnitude for what they are', () => {
    const [a, , , b] = pseudoInverse(of(1e14, 0, 0, 1e-14), 2);
    expect(a * 1e14).toBeCloseTo(1, 12);
    expect(b * 1e-14).toBeCloseTo(1, 12);
  });
  it('keeps a negative curvature negative', () => {
    near(pseudoInverse(of(-2, 0, 0, 5), 2), [-0.5, 0, 0, 0.2]);
  });
});

import { describe, expect, it } from 'vitest';
import { cholesky, forwardSolve, inverseFromFactor } from '../../../lib/stats/mixed/cholesky.ts';

// (4 2 2; 2 5 3; 2 3 6) is L L' with L = (2 0 0; 1 2 0; 1 1 2), and its determinant 64.
const matrix = [4, 2, 2, 2, 5, 3, 2, 3, 6];
const factored = (at = 0) => {
  const m = Float64Array.from([...new Array<number>(at).fill(7), ...matrix]);
  return { m, logDeterminant: cholesky(m, 3, at) };
};

describe('cholesky', () => {
  it('puts the factor in the lower triangle and leaves the upper one', () => {
    const { m, logDeterminant } = factored();
    expect([...m]).toEqual([2, 2, 2, 1, 2, 3, 1, 1, 2]);
    expect(logDeterminant).toBeCloseTo(Math.log(64), 14);
  });
  it('starts where it is told', () => {
    expect([...factored(2).m]).toEqual([7, 7, 2, 2, 2, 1, 2, 3, 1, 1, 2]);
  });
  it('gives NaN for what is not positive definite', () => {
    expect(cholesky(Float64Array.of(1, 2, 2, 4), 2)).toBeNaN();
    expect(cholesky(Float64Array.of(1, 2, 2, 3), 2)).toBeNaN();
  });
});

describe('what a factor is good for', () => {
  it('solves L X = B for several columns at once', () => {
    // L (1 0; 2 1; 3 1) is (2 0; 5 2; 9 3).
    const b = Float64Array.of(9, 2, 0, 5, 2, 9, 3);
    forwardSolve(factored().m, 3, 0, b, 2, 1);
    expect([...b]).toEqual([9, 1, 0, 2, 1, 3, 1]);
  });
  it("gives the inverse of L L', of leading rows alone where asked", () => {
    const { m } = factored();
    const inverse = inverseFromFactor(m, 3);
    // By cofactors: (21 -6 -4; -6 20 -8; -4 -8 16) / 64.
    for (const [i, value] of [21, -6, -4, -6, 20, -8, -4, -8, 16].entries())
      expect(inverse[i]).toBeCloseTo(value / 64, 14);
    // Of (4 2; 2 5): (5 -2; -2 4) / 16.
    for (const [i, value] of [5, -2, -2, 4].entries())
      expect(inverseFromFactor(m, 2, 3)[i]).toBeCloseTo(value / 16, 14);
  });
});

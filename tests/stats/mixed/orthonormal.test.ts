import { describe, expect, it } from 'vitest';
import { dot, orthonormal, subtract } from '../../../lib/stats/mixed/orthonormal.ts';

const of = (...numbers: number[]) => Float64Array.of(...numbers);

describe('orthonormal', () => {
  it('gives a basis and what makes the columns of it', () => {
    // (3 4) is 5 long; of (2 1) there lies (6 + 4) / 5 = 2 along it, and (0.8, -0.6) is left.
    const { basis, r, kept, dropped } = orthonormal([of(3, 4), of(2, 1)]);
    expect([kept, dropped]).toEqual([[0, 1], []]);
    for (const [i, value] of [5, 2, 0, 1].entries()) expect(r[i]).toBeCloseTo(value, 14);
    for (const [i, value] of [0.6, 0.8].entries()) expect(basis[0][i]).toBeCloseTo(value, 14);
    for (const [i, value] of [0.8, -0.6].entries()) expect(basis[1][i]).toBeCloseTo(value, 14);
  });
  it('drops what those before it make up, and columns of zeros', () => {
    const { kept, dropped, basis } = orthonormal([of(1, 1, 1), of(0, 0, 0), of(1, 2, 3), of(3, 5, 7), of(1, 0, 0)]);
    expect(kept).toEqual([0, 2, 4]);
    expect(dropped).toEqual([1, 3]);
    expect(basis).toHaveLength(3);
  });
  it('keeps its right angles where nearly all of a column is taken away', () => {
    const n = 50;
    const first = Float64Array.from({ length: n }, (_, i) => 1 + (i % 3));
    const near = first.map((value, i) => 1000 * value + 1e-3 * (i % 7));
    const { basis, kept } = orthonormal([first, near]);
    expect(kept).toEqual([0, 1]);
    expect(Math.abs(dot(basis[0], basis[1]))).toBeLessThan(1e-15);
    expect(dot(basis[1], basis[1])).toBeCloseTo(1, 14);
  });
});

describe('sums over columns', () => {
  it('take every row, whatever their number', () => {
    for (let n = 0; n < 10; n++) {
      const numbers = Float64Array.from({ length: n }, (_, i) => i + 1);
      // 1² + … + n².
      expect(dot(numbers, numbers)).toBe((n * (n + 1) * (2 * n + 1)) / 6);
    }
    const a = of(5, 6, 7);
    subtract(a, 2, of(1, 2, 3));
    expect([...a]).toEqual([3, 2, 1]);
  });
});

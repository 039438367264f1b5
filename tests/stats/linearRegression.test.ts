import { describe, expect, it } from 'vitest';
import { householder } from '../../lib/stats/householder.ts';
import { linearRegression } from '../../lib/stats/linearRegression.ts';
import { pearson } from '../../lib/stats/pearson.ts';

describe('linearRegression', () => {
  it('finds a plane again', () => {
    const [a, b] = [
      [1, 2, 3, 4, 5],
      [2, 1, 4, 3, 7],
    ];
    const y = a.map((value, i) => 10 + 2 * value - 3 * b[i]);
    const found = linearRegression([a, b], y, { names: ['age', 'length'] });
    expect(found.coefficients.map(({ term }) => term)).toEqual(['intercept', 'age', 'length']);
    [10, 2, -3].forEach((value, i) => {
      expect(found.coefficients[i].estimate).toBeCloseTo(value, 12);
    });
    expect(found.rSquared).toBeCloseTo(1, 12);
    expect([found.regression.df, found.residual.df]).toEqual([2, 2]);
  });
  it('one predictor: r squared, F and p are those of the correlation', () => {
    const [x, y] = [
      [1, 2, 3, 4, 6],
      [2, 1, 4, 4, 5],
    ];
    const found = linearRegression(x, y);
    const { r, t, p } = pearson(x, y);
    expect(found.rSquared).toBeCloseTo(r * r, 12);
    expect(found.F).toBeCloseTo(t * t, 10);
    expect(found.p).toBeCloseTo(p, 12);
    const [, slope] = found.coefficients;
    expect(slope.p).toBeCloseTo(p, 12);
    expect(slope.term).toBe('x');
    expect((slope.lower + slope.upper) / 2).toBeCloseTo(slope.estimate, 12);
    expect(linearRegression(x, y, { level: 0.5 }).coefficients[1].upper).toBeLessThan(slope.upper);
  });
  it('names the columns that depend on others and goes on without them', () => {
    const a = [1, 2, 3, 4, 5];
    const y = [2, 4, 5, 4, 5];
    const found = linearRegression([a, a.map((value) => 3 - 2 * value), [1, 0, 1, 0, 0]], y);
    expect(found.dropped).toEqual(['x2']);
    expect(found.coefficients[2]).toMatchObject({ term: 'x2', estimate: NaN, se: NaN, t: NaN, p: NaN });
    const without = linearRegression([a, [1, 0, 1, 0, 0]], y);
    expect(found.coefficients[3].estimate).toBeCloseTo(without.coefficients[2].estimate, 12);
    expect(found.residual.df).toBe(2);
    expect(linearRegression([7, 7, 7], [1, 2, 3]).dropped).toEqual(['x']);
  });
  it('a constant outcome, more columns than rows, and a column of zeros', () => {
    expect(linearRegression([1, 2, 3], [5, 5, 5]).coefficients[1].estimate).toBeCloseTo(0, 12);
    const narrow = linearRegression(
      [
        [1, 2],
        [1, 4],
      ],
      [3, 4],
    );
    expect(narrow.dropped).toEqual(['x2']);
    expect(narrow.residualSd).toBeNaN();
    expect(linearRegression([0, 0, 0], [1, 2, 3], { intercept: false }).dropped).toEqual(['x']);
  });
  it('residuals and fitted values add up to the outcome, rows with anything missing apart', () => {
    const y = [1, 3, 2, NaN, 6];
    const found = linearRegression([[1, 2, 3, 4, NaN]], y);
    expect([found.n, found.missing]).toEqual([3, 2]);
    found.residuals.forEach((residual, i) => {
      expect(residual + found.fitted[i]).toBeCloseTo(y[i], 12);
    });
    expect(found.residuals.reduce((sum, residual) => sum + residual, 0)).toBeCloseTo(0, 12);
  });
  it('the unit of a column does not matter', () => {
    const [x, y] = [
      [1, 2, 4, 7],
      [3, 1, 4, 9],
    ];
    const small = linearRegression(
      x.map((value) => value * 1e-9),
      y,
    );
    const plain = linearRegression(x, y);
    expect(small.coefficients[1].estimate / 1e9).toBeCloseTo(plain.coefficients[1].estimate, 12);
    expect(small.coefficients[1].t).toBeCloseTo(plain.coefficients[1].t, 10);
  });
  it('without an intercept the line goes through zero', () => {
    const found = linearRegression([1, 2], [2, 2], { intercept: false });
    expect(found.coefficients.map(({ term }) => term)).toEqual(['x']);
    expect(found.coefficients[0].estimate).toBeCloseTo(6 / 5, 15);
    expect(found.regression.df).toBe(1);
  });
});

it('householder solves a square system exactly enough and inverts its cross product', () => {
  const columns = [Float64Array.of(2, 0), Float64Array.of(1, 4)];
  const decomposition = householder(columns, 1e-12);
  expect([...decomposition.solve(Float64Array.of(5, 12))].map((value) => Math.round(value * 1e12) / 1e12)).toEqual([
    1, 3,
  ]);
  // XᵀX is 4, 2; 2, 17, of determinant 64.
  const inverse = decomposition.inverseCrossProduct();
  [17 / 64, -2 / 64].forEach((value, c) => {
    expect(inverse[0][c]).toBeCloseTo(value, 14);
  });
  expect(inverse[1][1]).toBeCloseTo(4 / 64, 14);
});
it('householder drops columns beyond the number of rows, zeros, and what depends on others, whatever the units', () => {
  const of = (...values: number[]) => Float64Array.of(...values);
  expect(householder([of(1, 1), of(1, 2), of(5, 7)], 1e-9)).toMatchObject({ kept: [0, 1], dropped: [2] });
  expect(householder([of(0, 0, 0), of(1e-6, 2e-6, 3e-6), of(2e9, 4e9, 6e9), of(1, 0, 0)], 1e-9)).toMatchObject({
    kept: [1, 3],
    dropped: [0, 2],
  });
});

import { describe, expect, it } from 'vitest';
import { ExactSums } from '../../../lib/stats/exactSums.ts';
import { dot, orthonormal, subtract } from '../../../lib/stats/mixed/orthonormal.ts';
import { orthonormalOfProducts } from '../../../lib/stats/mixed/orthonormalOfProducts.ts';
import { pair } from '../../../lib/stats/mixed/sumStore.ts';
import { random } from '../../../lib/stats/random.ts';

function productsOf(columns: readonly Float64Array[]) {
  const products = new ExactSums(pair(columns.length, 0));
  for (const [a, one] of columns.entries())
    for (const [b, two] of columns.slice(0, a + 1).entries())
      for (let row = 0; row < one.length; row++) products.addProduct(pair(a, b), one[row], two[row]);
  products.carry();
  return orthonormalOfProducts(
    products,
    columns.length,
    columns.map((column) => Math.sqrt(dot(column, column))),
  );
}

const { normal } = random(12);
const column = (of: (row: number) => number) => Float64Array.from({ length: 40 }, (_, row) => of(row));
const [one, x, z, y] = [column(() => 1), column(normal), column(normal), column(normal)];

describe('the basis that products of columns tell', () => {
  it.each([
    ['plain columns', [one, x, z]],
    ['columns of very different sizes', [one, x.map((value) => 1e40 * value), z.map((value) => 1e-40 * value)]],
    ['a column that is nearly another', [one, x, x.map((value, row) => value + 1e-5 * z[row])]],
    ['columns that are none', [one, one.map((value) => 3 * value), x, column(() => 0), x.map((value) => 2 - value), z]],
    ['no columns', []],
  ])('is the one of %s themselves', (_, columns) => {
    const found = productsOf([...columns, y]);
    const { basis, r, kept, dropped } = orthonormal(columns);
    expect(found.kept).toEqual(kept);
    expect(found.dropped).toEqual(dropped);
    const p = kept.length;
    for (let j = 0; j < p; j++) {
      const length = Math.sqrt(dot(columns[kept[j]], columns[kept[j]]));
      for (let i = 0; i < p; i++) expect(Math.abs(found.r[i * p + j] - r[i * p + j])).toBeLessThan(1e-14 * length);
    }
    const left = y.slice();
    for (const [j, direction] of basis.entries()) {
      const along = dot(direction, left);
      // A direction that is nearly lost is known to as many digits fewer.
      expect(Math.abs(found.leastSquares[j] - along)).toBeLessThan(1e-9);
      subtract(left, along, direction);
    }
    expect(Math.abs(found.residualSquares / dot(left, left) - 1)).toBeLessThan(1e-9);
  });

  it('keeps the digits of a direction that products in doubles would lose', () => {
    // x and x + e z, e a power of 2: by hand, what is left beside x is e times what is left of z.
    const [coarse, other] = [x, z].map((values) => values.map((value) => Math.round(value * 1024) / 1024));
    const e = 2 ** -22;
    const { r } = productsOf([coarse, coarse.map((value, row) => value + e * other[row]), y]);
    const rest = other.slice();
    subtract(rest, dot(coarse, other) / dot(coarse, coarse), coarse);
    expect(Math.abs(r[3] / (e * Math.sqrt(dot(rest, rest))) - 1)).toBeLessThan(1e-13);
  });
});

import { describe, expect, it } from 'vitest';
import { blocks, withResponse } from '../../../lib/stats/mixed/blocks.ts';
import { type Design, design, type RandomSpec } from '../../../lib/stats/mixed/design.ts';
import { yard } from './data.ts';

const shapes: Record<string, readonly RandomSpec[]> = {
  'limbs within horses': [{ by: ['horse', 'limb'] }, { by: ['horse'] }],
  'slopes within horses, and farriers across them': [
    { by: ['horse'], slopes: ['x'] },
    { by: ['farrier'], slopes: ['x'] },
    { by: ['visit'] },
  ],
};

/** One column of Z for each level and coefficient of a term, row by row, as the book has them. */
const columnsOf = ({ codes, levels, coefficients }: Design['random'][number]) =>
  levels.flatMap((_, level) =>
    coefficients.map(({ values }) => Array.from(codes, (code, i) => (code === level ? (values?.[i] ?? 1) : 0))),
  );
const product = (a: ArrayLike<number>, b: ArrayLike<number>) => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
};

describe.each(Object.entries(shapes))('the blocks of %s', (_, random) => {
  const rows = design(yard(5, { horses: 6 }), { response: 'y', fixed: ['x', 'limb'], random });
  const model = blocks(rows);
  const wide = model.crossed + model.p + 1;
  const residual = (() => {
    const left = rows.y.slice();
    for (const direction of model.basis) {
      const along = product(direction, rows.y);
      for (let i = 0; i < left.length; i++) left[i] -= along * direction[i];
    }
    return left;
  })();
  const crossed = model.rest.flatMap(({ term }) => columnsOf(term));
  const u = [...crossed, ...model.basis, residual];

  it("hold Z'Z and Z'U of each cluster", () => {
    const seen = model.local.map(({ term, width, clusterOf, placeOf }) => {
      const columns = columnsOf(term);
      return columns.map((column, at) => {
        const level = Math.floor(at / width);
        return { column, h: clusterOf[level], place: placeOf[level] + (at % width) };
      });
    });
    const all = seen.flat();
    expect(all).toHaveLength(model.size.reduce((sum, size) => sum + size, 0));
    for (const one of all) {
      for (const two of all) {
        const expected = product(one.column, two.column);
        if (one.h !== two.h) expect(expected).toBe(0);
        else
          expect(model.zz[model.zzStart[one.h] + one.place * model.size[one.h] + two.place]).toBeCloseTo(expected, 10);
      }
      for (const [j, column] of u.entries())
        expect(model.zu[model.zuStart[one.h] + one.place * wide + j]).toBeCloseTo(product(one.column, column), 9);
    }
  });
  it("hold U'U", () => {
    expect(u).toHaveLength(wide);
    for (const [i, one] of u.entries())
      for (const [j, two] of u.entries()) expect(model.uu[i * wide + j]).toBeCloseTo(product(one, two), 8);
  });
  it('of another response are those of a fresh start', () => {
    const response = rows.y.map((y, i) => y * y - 3 * i);
    const [again, fresh] = [withResponse(model, response), blocks({ ...rows, y: response })];
    for (const key of ['zz', 'zu', 'uu', 'leastSquares'] as const) {
      expect(again[key]).toHaveLength(fresh[key].length);
      const scale = fresh[key].reduce((most, each) => Math.max(most, Math.abs(each)), 0);
      for (const [i, value] of fresh[key].entries())
        expect(Math.abs(again[key][i] - value)).toBeLessThan(1e-12 * scale);
    }
  });
});

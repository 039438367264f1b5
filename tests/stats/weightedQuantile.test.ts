import fc from 'fast-check';
import { expect, it } from 'vitest';
import { quantile } from '../../lib/stats/quantile.ts';
import { weightedQuantile } from '../../lib/stats/weightedQuantile.ts';

it('whole weights are values written out that often', () => {
  const pair = fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: 0, max: 4 }));
  fc.assert(
    fc.property(
      fc.array(pair, { minLength: 1, maxLength: 9 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (rows, q) => {
        const written = rows.flatMap(([value, weight]) => Array.from({ length: weight }, () => value));
        fc.pre(written.length > 0);
        const found = weightedQuantile(
          rows.map(([value]) => value),
          rows.map(([, weight]) => weight),
          q,
        );
        expect(found).toBeCloseTo(quantile(written, q), 9);
      },
    ),
  );
});
it('missing rows are left out, no weight at all is missing', () => {
  expect(weightedQuantile([1, NaN, 3], [1, 5, 1], 0.5)).toBe(2);
  expect(weightedQuantile([1, 2, 3], [1, NaN, 1], 0.5)).toBe(2);
  expect(weightedQuantile([1, 2], [0, 0], 0.5)).toBeNaN();
  expect(weightedQuantile([], [], 0.5)).toBeNaN();
  expect(weightedQuantile([1, 2], [1, 1], NaN)).toBeNaN();
});
it('a negative weight or a share outside 0 to 1 is refused', () => {
  expect(() => weightedQuantile([1, 2], [1, -1], 0.5)).toThrow('Weights of 0 or more were expected, found -1');
  expect(() => weightedQuantile([1], [1], 1.5)).toThrow(/A share from 0 to 1 was expected, found 1.5/);
  expect(() => weightedQuantile([1], [1], -0.5)).toThrow(TypeError);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { newRowIds, placesForNew, placesOf, type RowIds, rowIdAt } from '../../lib/store/rowIds.ts';

/** Ids in any order, as `origin/number`. */
function idsOf(...ids: string[]): RowIds {
  const parts = ids.map((id) => id.split('/'));
  const origins = [...new Set(parts.map(([origin]) => origin))];
  return {
    origins,
    codes: Int32Array.from(parts, ([origin]) => origins.indexOf(origin)),
    numbers: Float64Array.from(parts, ([, number]) => Number(number)),
  };
}

test('rows that came together are numbered from 0', () => {
  const ids = newRowIds('a', 3);
  expect([0, 1, 2].map((row) => rowIdAt(ids, row))).toEqual(['a/0', 'a/1', 'a/2']);
  expect(placesOf(ids, ['a/2', null, 'b/1', 'a/3', 'a/0'])).toEqual([2, -1, -1, -1, 0]);
});

test('few rows and many are found wherever they have come to stand', () => {
  const id = fc.tuple(fc.constantFrom('a', 'b/c', '__proto__'), fc.nat(60)).map((parts) => parts.join('/'));
  fc.assert(
    fc.property(fc.uniqueArray(id, { maxLength: 90 }), fc.array(id, { maxLength: 90 }), (stand, wanted) => {
      const ids = {
        ...idsOf(...stand.map((one) => one.replace('b/c', 'b'))),
        origins: idsOf(...stand.map((one) => one.replace('b/c', 'b'))).origins.map((one) =>
          one === 'b' ? 'b/c' : one,
        ),
      };
      expect(placesOf(ids, wanted)).toEqual(wanted.map((one) => stand.indexOf(one)));
    }),
  );
});

test('new rows stand below what they were put below, the top where that is nothing, the end where it is gone', () => {
  const ids = newRowIds('a', 2);
  expect(placesForNew(ids, ['n/0', 'n/1', 'n/2', 'n/3'], [null, 'n/0', 'a/0', 'gone/7'])).toEqual({
    order: [0, 1, 2, 3],
    places: [0, 1, 3, 5],
  });
  // Of two below one row the later stands nearer to it.
  expect(placesForNew(ids, ['n/0', 'n/1'], ['a/0', 'a/0'])).toEqual({ order: [1, 0], places: [1, 2] });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ColumnInput, type NumberColumn, TextColumn, toColumn } from '../../lib/sheet/column.ts';
import { asInput, rowsOf, withoutRows, withRows } from '../../lib/sheet/rowEdits.ts';

const number: ColumnInput = {
  kind: 'number',
  unit: 'mm',
  values: Float64Array.of(1, 2, 3, 4),
  error: Float64Array.of(0.1, 0.2, 0.3, 0.4),
};
const text = TextColumn.from(['a', '', 'b', 'a']);
const plain = (column: ColumnInput) => [...column.values];

describe('withoutRows', () => {
  test('takes rows out of values, errors and text', () => {
    const left = withoutRows(toColumn(number), [0, 2]) as NumberColumn;
    expect([plain(left), plain({ values: left.error! }), left.unit]).toEqual([[2, 4], [0.2, 0.4], 'mm']);
    expect(plain(withoutRows(text, [1, 3]))).toEqual(['a', 'b']);
    expect(plain(withoutRows(text, [0, 1, 2, 3]))).toEqual([]);
  });
});

describe('withRows', () => {
  test('puts rows where they stand afterwards', () => {
    const more = withRows(toColumn(number), [0, 2, 5], rowsOf(toColumn(number), [3, 2, 1])) as NumberColumn;
    expect(plain(more)).toEqual([4, 1, 3, 2, 3, 2, 4]);
    expect(plain({ values: more.error! })).toEqual([0.4, 0.1, 0.3, 0.2, 0.3, 0.2, 0.4]);
    const longer = withRows(text, [1, 5], { values: ['new', 'b'] }) as TextColumn;
    expect(plain(longer)).toEqual(['a', 'new', '', 'b', 'a', 'b']);
    expect(longer.levels).toEqual(['a', 'b', 'new']);
  });

  test('leaves them missing where nothing is given, their errors too', () => {
    const more = withRows(toColumn(number), [4]) as NumberColumn;
    expect([more.values[4], more.error![4], more.error![3]]).toEqual([Number.NaN, Number.NaN, 0.4]);
    expect(plain(withRows(text, [0]))).toEqual(['', 'a', '', 'b', 'a']);
    expect((withRows(toColumn({ values: Float64Array.of(1) }), [0]) as NumberColumn).error).toBeUndefined();
  });

  test('keeps errors that only the new rows have', () => {
    const more = withRows(toColumn({ values: Float64Array.of(1) }), [1], {
      values: Float64Array.of(2),
      error: Float64Array.of(0.5),
    });
    expect(plain({ values: (more as NumberColumn).error! })).toEqual([Number.NaN, 0.5]);
  });

  test('undoes withoutRows, whichever rows were taken', () => {
    const rows = fc.uniqueArray(fc.nat(3)).map((some) => some.sort((a, b) => a - b));
    fc.assert(
      fc.property(rows, (some) => {
        for (const column of [toColumn(number), text]) {
          const back = withRows(withoutRows(column, some), some, rowsOf(column, some));
          expect(plain(back)).toEqual(plain(column));
          expect((back as NumberColumn).error).toEqual((column as NumberColumn).error);
        }
      }),
    );
  });
});

test('asInput is plain data that can be copied', () => {
  expect(structuredClone(asInput(text))).toEqual({ kind: 'text', unit: '1', values: ['a', '', 'b', 'a'] });
  expect(structuredClone(asInput(number))).toEqual(number);
});

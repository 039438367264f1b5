import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { repeatedRows } from '../../lib/files/repeatedRows.ts';
import { type Column, TextColumn } from '../../lib/sheet/column.ts';

const numbers = (...values: number[]): Column => ({ kind: 'number', unit: '1', values: Float64Array.from(values) });

describe('repeatedRows', () => {
  it('pairs a row with the first that has the same keys, missing ones included', () => {
    const keys = [TextColumn.from(['A', 'A', 'A', 'A', 'B']), numbers(1, Number.NaN, 1, Number.NaN, 1)];
    expect(repeatedRows(keys, [], 5)).toEqual([
      { row: 2, first: 0 },
      { row: 3, first: 1 },
    ]);
    expect(repeatedRows(keys, [keys[1]], 5)).toEqual([{ row: 2, first: 0 }]);
  });

  it('finds none where all differ, be the numbers whole, parts, far apart or missing', () => {
    for (const values of [
      [3, 2, 1],
      [0.5, 0.25, 0],
      [-1e300, 1e300, 7],
      [Number.NaN, 0, 1],
      [Number.NaN, -5, 5],
    ])
      expect(repeatedRows([numbers(...values)], [], 3)).toEqual([]);
    expect(repeatedRows([numbers()], [], 0)).toEqual([]);
  });

  it('is what a map of keys gives (law)', () => {
    const cell = fc.tuple(fc.constantFrom('', 'a', 'b'), fc.constantFrom(Number.NaN, 0, 1, -3, 0.5, 1e15));
    fc.assert(
      fc.property(fc.array(cell, { maxLength: 12 }), (rows) => {
        const keys = [TextColumn.from(rows.map(([text]) => text)), numbers(...rows.map(([, number]) => number))];
        const firsts = new Map<string, number>();
        const expected = rows.flatMap(([text, number], row) => {
          const key = `${text} ${number}`;
          const first = firsts.get(key);
          if (first === undefined) firsts.set(key, row);
          return first === undefined ? [] : [{ row, first }];
        });
        expect(repeatedRows(keys, [], rows.length)).toEqual(expected);
      }),
    );
  });
});

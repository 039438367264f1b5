import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Column, TextColumn, toColumn } from '../../lib/sheet/column.ts';
import { groupRows } from '../../lib/sheet/groups.ts';

const none = Number.NaN;

describe('groups of rows', () => {
  test('are numbered in the order of their first rows', () => {
    const { codes, count } = groupRows([TextColumn.from(['RF', 'LF', 'RF', 'LH'])], 4);
    expect([...codes]).toEqual([0, 1, 0, 2]);
    expect(count).toBe(3);
  });

  test('without keys are one group of all rows, or none without rows', () => {
    expect(groupRows([], 3)).toEqual({ codes: new Int32Array(3), count: 1 });
    expect(groupRows([], 0)).toEqual({ codes: new Int32Array(0), count: 0 });
    expect(groupRows([TextColumn.from([])], 0)).toEqual({ codes: new Int32Array(0), count: 0 });
  });

  test('take a missing key as a key, be it text or a number', () => {
    expect([...groupRows([TextColumn.from(['', 'a', ''])], 3).codes]).toEqual([0, 1, 0]);
    expect([...groupRows([toColumn({ values: Float64Array.of(1, none, none, 1) })], 4).codes]).toEqual([0, 1, 1, 0]);
    expect(groupRows([toColumn({ values: Float64Array.of(none, none) })], 2).count).toBe(1);
  });

  test('leave out texts of the dictionary that no row has', () => {
    expect(groupRows([new TextColumn(Int32Array.of(2, 2), ['a', 'b', 'c'])], 2)).toEqual({
      codes: new Int32Array(2),
      count: 1,
    });
  });

  test('keep apart numbers that are further from each other than a code can count', () => {
    for (const values of [
      [0, 2 ** 32, 0],
      [-(2 ** 40), 2 ** 40, -(2 ** 40)],
    ])
      expect([...groupRows([toColumn({ values: Float64Array.from(values) })], 3).codes]).toEqual([0, 1, 0]);
  });

  test('are the same as by comparing rows one by one', () => {
    const numbers = fc.array(fc.constantFrom(none, 0, -0, 1, 2.5, -7, 1e9, 20000), { minLength: 12, maxLength: 12 });
    const texts = fc.array(fc.constantFrom('', 'a', 'b', '__proto__'), { minLength: 12, maxLength: 12 });
    const column: fc.Arbitrary<Column> = fc.oneof(
      numbers.map((values) => toColumn({ values: Float64Array.from(values) })),
      texts.map((values) => TextColumn.from(values)),
    );
    fc.assert(
      fc.property(fc.array(column, { maxLength: 4 }), (columns) => {
        const same = (a: number, b: number) =>
          columns.every(
            ({ values }) => values[a] === values[b] || (Number.isNaN(values[a]) && Number.isNaN(values[b])),
          );
        const { codes, count } = groupRows(columns, 12);
        let next = 0;
        for (let row = 0; row < 12; row++) {
          const first = codes.findIndex((_, other) => same(row, other));
          expect(codes[row]).toBe(first === row ? next++ : codes[first]);
        }
        expect(count).toBe(next);
      }),
    );
  });

  test('of many rows are the same as by their keys written side by side', () => {
    const rows = 1500;
    const numbers = (of: (row: number) => number) =>
      toColumn({ values: Float64Array.from({ length: rows }, (_, row) => of(row)) });
    const columns = {
      fractions: numbers((row) => ((row * 7) % 201) + 0.5),
      days: numbers((row) => 20000 + ((row * row) % 97)),
      negative: numbers((row) => (row % 11 === 0 ? none : -50 - (row % 83))),
      scattered: numbers((row) => 1e6 * ((row * 13) % 150)),
      words: TextColumn.from(Array.from({ length: rows }, (_, row) => `w${(row * 3) % 140}`)),
      few: TextColumn.from(Array.from({ length: rows }, (_, row) => ['', 'LF', 'RF'][row % 3])),
    };
    const all = Object.values(columns);
    const sets = all.flatMap((one, i) => [
      [one],
      ...all.slice(i + 1).flatMap((two, j) => [
        [one, two],
        [two, one],
        [one, two, all[(i + j) % all.length]],
      ]),
    ]);
    for (const keys of sets) {
      const known = new Map<string, number>();
      const expected = Int32Array.from({ length: rows }, (_, row) => {
        const written = keys.map(({ values }) => values[row]).join('|');
        if (!known.has(written)) known.set(written, known.size);
        return known.get(written)!;
      });
      expect(groupRows(keys, rows)).toEqual({ codes: expected, count: known.size });
    }
  });

  test('by keys with more pairs than a table could hold', () => {
    const rows = 50_000;
    const scattered = toColumn({ values: Float64Array.from({ length: rows }, (_, row) => row + 0.5) });
    const backward = toColumn({ values: Float64Array.from({ length: rows }, (_, row) => rows - row - 0.5) });
    const { codes, count } = groupRows([scattered, backward, TextColumn.from(new Array(rows).fill('x'))], rows);
    expect(count).toBe(rows);
    expect(codes[rows - 1]).toBe(rows - 1);
  });
});

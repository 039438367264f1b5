import { describe, expect, test } from 'vitest';
import { rowCount, TextColumn, toColumn } from '../../lib/sheet/column.ts';

describe('TextColumn', () => {
  test('keeps each text once, in the order in which they come; the empty one is missing', () => {
    const column = TextColumn.from(['RF', '', 'LF', 'RF']);
    expect([...column.codes]).toEqual([0, -1, 1, 0]);
    expect(column.levels).toEqual(['RF', 'LF']);
    expect(column.values).toEqual(['RF', '', 'LF', 'RF']);
    expect(column.values).toBe(column.values);
  });
});

describe('toColumn', () => {
  test('gives numbers a kind and a unit, days for dates', () => {
    const values = Float64Array.of(1);
    expect(toColumn({ values })).toMatchObject({ kind: 'number', unit: '1' });
    expect(toColumn({ kind: 'date', values })).toMatchObject({ kind: 'date', unit: 'd' });
    expect(toColumn({ kind: 'boolean', values, unit: '1' })).toMatchObject({ kind: 'boolean', unit: '1' });
    expect(toColumn({ unit: 'mm', values }).values).toBe(values);
  });

  test('takes numbers for numbers, even where they are said to be text', () => {
    expect(toColumn({ kind: 'text', values: Float64Array.of(1) }).kind).toBe('number');
  });

  test('leaves text that has its codes as it is', () => {
    const column = TextColumn.from(['LF']);
    expect(toColumn(column)).toBe(column);
  });
});

describe('rowCount', () => {
  const x = { values: Float64Array.of(1, 2) };

  test('is the length that all columns have, 0 without columns', () => {
    expect(rowCount({ x, limb: { values: ['LF', 'RF'] }, coded: TextColumn.from(['a', 'b']) })).toBe(2);
    expect(rowCount({})).toBe(0);
  });

  test('is none where they differ, an empty column included', () => {
    expect(() => rowCount({ x, y: { values: ['LF'] } })).toThrow(
      'Column y has 1 rows where the columns before it have 2',
    );
    expect(() => rowCount({ none: { values: [] }, x })).toThrow('Column x has 2 rows');
  });
});

import { describe, expect, test } from 'vitest';
import { TextColumn } from '../../lib/sheet/column.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import type { Relation } from '../../lib/sheet/relation.ts';

const twin: Relation = {
  name: 'twin',
  words: "its twin's",
  match: [],
  swap: { side: { left: 'right', right: 'left' } },
};

describe('a plain table', () => {
  const table = plainTable({ side: { values: ['left', 'right'] }, x: { unit: 'mm', values: Float64Array.of(1, 2) } }, [
    twin,
  ]);

  test('has its columns by name, text as codes', () => {
    expect(table.rows).toBe(2);
    expect(table.names).toEqual(['side', 'x']);
    expect(table.column('side')).toBeInstanceOf(TextColumn);
    expect(table.column('x')).toMatchObject({ kind: 'number', unit: 'mm' });
  });

  test('finds partners and groups once', () => {
    expect([...table.partners(twin)]).toEqual([1, 0]);
    expect(table.partners(twin)).toBe(table.partners(twin));
    expect(table.groups(['side'])).toBe(table.groups(['side']));
    expect(table.groups(['side']).count).toBe(2);
    expect(table.groups([]).count).toBe(1);
  });

  test('says which columns there are where one is not', () => {
    expect(() => table.column('y')).toThrow('There is no column y; there are side, x');
    expect(() => table.column('__proto__')).toThrow(TypeError);
  });

  test('refuses columns of different lengths', () => {
    expect(() => plainTable({ a: { values: ['x'] }, b: { values: [] } })).toThrow('Column b has 0 rows');
  });

  test('may be empty', () => {
    expect(plainTable({}).rows).toBe(0);
  });
});

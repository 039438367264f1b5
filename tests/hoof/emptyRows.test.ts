import { expect, it } from 'vitest';
import { emptyRows } from '../../lib/hoof/emptyRows.ts';
import { TextColumn } from '../../lib/sheet/column.ts';

it('a row of texts is empty where there is nothing but blanks', () => {
  expect(emptyRows({ values: ['Bella', '', ' ', 'Kit'] })).toEqual([1, 2]);
});

it('so it is where texts stand as codes', () => {
  expect(emptyRows(TextColumn.from(['Bella', '', ' ', 'Bella', ' ', 'Kit']))).toEqual([1, 2, 4]);
});

it('a row of numbers is empty where there is no number, and not at zero', () => {
  expect(emptyRows({ values: Float64Array.of(0, Number.NaN, 7) })).toEqual([1]);
});

it('a column without rows has no empty ones', () => {
  expect([{ values: [] }, TextColumn.from([]), { values: new Float64Array(0) }].map(emptyRows)).toEqual([[], [], []]);
});

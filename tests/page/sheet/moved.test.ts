import { expect, test } from 'vitest';
import { moved } from '../../../lib/page/sheet/moved.ts';

const size = { row: 100, column: 5 };
const from =
  (row: number, column: number) =>
  (key: string, control = false) =>
    moved(key, control, { row, column }, size, 20);

test('arrows go one cell, and stop at the edges and in the heading', () => {
  const middle = from(10, 2);
  expect(middle('ArrowDown')).toEqual({ row: 11, column: 2 });
  expect(middle('ArrowLeft')).toEqual({ row: 10, column: 1 });
  expect(from(0, 0)('ArrowUp')).toEqual({ row: -1, column: 0 });
  expect(from(-1, 0)('ArrowUp')).toEqual({ row: -1, column: 0 });
  expect(from(99, 4)('ArrowDown')).toEqual({ row: 99, column: 4 });
  expect(from(99, 4)('ArrowRight')).toEqual({ row: 99, column: 4 });
});

test('Home and End go along the row, with Control to the corners', () => {
  const middle = from(10, 2);
  expect(middle('Home')).toEqual({ row: 10, column: 0 });
  expect(middle('End')).toEqual({ row: 10, column: 4 });
  expect(middle('Home', true)).toEqual({ row: 0, column: 0 });
  expect(middle('End', true)).toEqual({ row: 99, column: 4 });
});

test('Page Up and Page Down go a screen, and Page Up ends at the first row of cells', () => {
  expect(from(10, 2)('PageDown')).toEqual({ row: 30, column: 2 });
  expect(from(95, 2)('PageDown')).toEqual({ row: 99, column: 2 });
  expect(from(10, 2)('PageUp')).toEqual({ row: 0, column: 2 });
  expect(from(-1, 2)('PageUp')).toEqual({ row: -1, column: 2 });
});

test('any other key stays where it is', () => {
  expect(from(10, 2)('a')).toBeUndefined();
});

test('an empty table has its heading to stand in', () => {
  expect(moved('End', true, { row: -1, column: 0 }, { row: 0, column: 3 }, 20)).toEqual({ row: -1, column: 2 });
  expect(moved('Home', true, { row: -1, column: 2 }, { row: 0, column: 3 }, 20)).toEqual({ row: -1, column: 0 });
});

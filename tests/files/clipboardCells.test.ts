import { expect, test } from 'vitest';
import { clipboardCells } from '../../lib/files/clipboardCells.ts';

test('lines of cells, whatever ends them', () => {
  const cells = [
    ['a', 'b'],
    ['c', 'd'],
  ];
  for (const text of ['a\tb\nc\td', 'a\tb\r\nc\td\r\n', 'a\tb\rc\td\r'])
    expect(clipboardCells(text).cells).toEqual(cells);
});

test('a quoted cell may hold tabs, line breaks and quotes', () => {
  expect(clipboardCells('"a\tb\n""c"""\td\n').cells).toEqual([['a\tb\n"c"', 'd']]);
});

test('short lines are filled up, and empty cells stay', () => {
  expect(clipboardCells('a\t\tc\nd\n').cells).toEqual([
    ['a', '', 'c'],
    ['d', '', ''],
  ]);
});

test('one cell is one cell', () => {
  expect(clipboardCells('3 1/4"').cells).toEqual([['3 1/4"']]);
});

test('the decimal mark is the one that more cells have', () => {
  expect(clipboardCells('52,375\t8,5 cm').mark).toBe(',');
  expect(clipboardCells('52.375\t8.5 cm').mark).toBe('.');
  expect(clipboardCells('52').mark).toBe('.');
});

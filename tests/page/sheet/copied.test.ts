import { expect, test } from 'vitest';
import { copied } from '../../../lib/page/sheet/copied.ts';

test('cells are parted by tabs and rows by line ends', () => {
  expect(copied(2, 2, (row, column) => `${row}${column}`)).toBe('00\t01\n10\t11');
});

test('a tab or a line end inside a cell becomes a space', () => {
  expect(copied(1, 2, () => 'a\t\r\nb')).toBe('a b\ta b');
});

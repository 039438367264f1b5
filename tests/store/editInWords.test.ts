import { expect, test } from 'vitest';
import { editInWords, type How } from '../../lib/store/editInWords.ts';
import type { CellsEdit, Entered, JournalEdit, RowsEdit } from '../../lib/store/journal.ts';

const cells = (column: string, rows: string[], after: Entered[]): CellsEdit => ({
  kind: 'cells',
  column,
  holds: 'number',
  unit: '1',
  rows,
  before: rows.map(() => 1),
  after,
});
const rows = (how: 'add' | 'remove', ids: string[]): RowsEdit => ({
  kind: 'rows',
  how,
  rows: ids,
  below: ids.map(() => null),
  columns: [],
});
const own = { name: 'x', formula: 'a' };

test.each([
  ['set', [cells('a', ['p/3'], [2])], 'typing in A'],
  ['set', [cells('a', ['p/3', 'p/4'], [null, null])], 'clearing A, 2 rows'],
  ['set', [cells('a', ['p/3', 'p/4'], [null, { text: 'long' }])], 'typing in A, 2 rows'],
  ['fill', [cells('a', ['p/3', 'p/4'], [2, 2]), cells('b', ['p/4'], [2])], 'filling A and B, 2 rows'],
  ['paste', ['a', 'b', 'c'].map((name) => cells(name, ['p/1'], [2])), 'pasting into 3 columns'],
  ['set', [rows('add', ['p/1'])], 'adding a row'],
  ['set', [rows('remove', ['p/1', 'p/2'])], 'removing 2 rows'],
  ['set', [{ kind: 'own column', column: 'x', place: 0, before: null, after: own }], 'adding the column x'],
  ['set', [{ kind: 'own column', column: 'x', place: 0, before: own, after: null }], 'removing the column x'],
  ['set', [{ kind: 'opened', before: null, after: 'feet.csv' }], 'opening feet.csv'],
  ['set', [{ kind: 'opened', before: 'feet.csv', after: null }], 'putting a table away'],
  ['paste', [rows('add', ['p/1']), cells('a', ['p/1'], [2])], 'pasting into A'],
] satisfies [How, JournalEdit[], string][])('a change is said in words: %#', (how, edits, words) => {
  expect(editInWords(edits, how, (name) => name.toUpperCase())).toBe(words);
});

import { expect, test } from 'vitest';
import type { CellChanges } from '../../lib/sheet/edits.ts';
import { editInWords } from '../../lib/store/editInWords.ts';

const change = (name: string, rows: number[], after: (number | null)[]): CellChanges => ({
  name,
  kind: 'number',
  rows,
  before: rows.map(() => 1),
  after,
});
const titleOf = (name: string) => name.toUpperCase();

test.each([
  [[{ kind: 'cells', how: 'set', cells: [change('a', [3], [2])] }], 'typing in A'],
  [[{ kind: 'cells', how: 'set', cells: [change('a', [3, 4], [null, null])] }], 'clearing A, 2 rows'],
  [
    [{ kind: 'cells', how: 'fill', cells: [change('a', [3, 4], [2, 2]), change('b', [4], [2])] }],
    'filling A and B, 2 rows',
  ],
  [
    [{ kind: 'cells', how: 'paste', cells: ['a', 'b', 'c'].map((name) => change(name, [1], [2])) }],
    'pasting into 3 columns',
  ],
  [[{ kind: 'rows', how: 'add', rows: [1], columns: {} }], 'adding a row'],
  [[{ kind: 'rows', how: 'remove', rows: [1, 2], columns: {} }], 'removing 2 rows'],
  [[{ kind: 'columns', how: 'add', places: [0], columns: [{ name: 'x', formula: 'a' }] }], 'adding the column x'],
  [
    [
      { kind: 'rows', how: 'add', rows: [1], columns: {} },
      { kind: 'cells', how: 'paste', cells: [change('a', [1], [2])] },
    ],
    'pasting into A',
  ],
] as const)('a change is said in words: %#', (edits, words) => {
  expect(editInWords(edits, titleOf)).toBe(words);
});

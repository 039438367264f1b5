import { expect, test } from 'vitest';
import { type Condition, matchingRows, type Order } from '../../../lib/page/sheet/matchingRows.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';

const table = plainTable({
  horse: { values: ['Star', 'bramble', '', 'Horse 10', 'Horse 9', 'Star'] },
  toe: { unit: 'deg', values: Float64Array.of(52, 48, 50, Number.NaN, 55, 52) },
});
const rows = (conditions: readonly Condition[], order?: Order, among?: Uint32Array) => [
  ...matchingRows(table, conditions, order, among),
];

test('without conditions or order all rows stay as they are', () => {
  expect(rows([])).toEqual([0, 1, 2, 3, 4, 5]);
});

test('text is found inside, without regard to case; a missing text contains nothing', () => {
  expect(rows([{ column: 'horse', contains: 'AR' }])).toEqual([0, 5]);
  expect(rows([{ column: 'horse', contains: '' }])).toEqual([0, 1, 3, 4, 5]);
});

test('a range holds its ends; a missing number lies in none', () => {
  expect(rows([{ column: 'toe', from: 50, to: 52 }])).toEqual([0, 2, 5]);
  expect(rows([{ column: 'toe' }])).toEqual([0, 1, 2, 4, 5]);
});

test('every condition must be met', () => {
  expect(
    rows([
      { column: 'toe', from: 50 },
      { column: 'horse', contains: 'star' },
    ]),
  ).toEqual([0, 5]);
});

test('missing comes last in either direction, and equal rows keep their order', () => {
  expect(rows([], { column: 'toe', direction: 'ascending' })).toEqual([1, 2, 0, 5, 4, 3]);
  expect(rows([], { column: 'toe', direction: 'descending' })).toEqual([4, 0, 5, 2, 1, 3]);
});

test('names sort as people count', () => {
  expect(rows([], { column: 'horse', direction: 'ascending' })).toEqual([1, 4, 3, 0, 5, 2]);
});

test('only the rows asked about are looked at, and they are not changed', () => {
  const among = Uint32Array.of(5, 4, 0);
  expect(rows([{ column: 'horse', contains: 's' }], { column: 'toe', direction: 'descending' }, among)).toEqual([
    4, 0, 5,
  ]);
  expect([...among]).toEqual([5, 4, 0]);
});

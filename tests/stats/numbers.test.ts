import { expect, it } from 'vitest';
import { isMissing, present, presentRows } from '../../lib/stats/numbers.ts';

it('NaN and JSON’s null are missing, zero and infinity are not', () => {
  expect([NaN, null as unknown as number].map(isMissing)).toEqual([true, true]);
  expect([0, -0, Infinity, -Infinity, 3].map(isMissing)).toEqual([false, false, false, false, false]);
});
it('present hands out a copy even where nothing is missing', () => {
  const values = Float64Array.of(2, 1);
  present(values).sort();
  expect([...values]).toEqual([2, 1]);
  expect([...present([3, NaN, 1, NaN])]).toEqual([3, 1]);
});
it('presentRows leaves a row out where any column lacks it', () => {
  const { columns, missing } = presentRows([
    [1, 2, NaN, 4],
    [5, NaN, 7, 8],
  ]);
  expect(columns.map((column) => [...column])).toEqual([
    [1, 4],
    [5, 8],
  ]);
  expect(missing).toBe(2);
  expect(presentRows([])).toEqual({ columns: [], missing: 0 });
});
it('presentRows refuses columns of different lengths and names both', () => {
  expect(() => presentRows([[1, 2], [1]])).toThrow('Columns of one length were expected, found 2 and 1 values');
});

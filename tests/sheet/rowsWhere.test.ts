import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FormulaError } from '../../lib/sheet/formula/syntax.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { rowsWhere } from '../../lib/sheet/rowsWhere.ts';
import { Sheet } from '../../lib/sheet/sheet.ts';

const table = plainTable({
  toe: { unit: 'deg', values: Float64Array.of(52, Number.NaN, 48, 55, 48) },
  horse: { values: ['Hoof 10', 'ada', 'Hoof 9', '', 'Ada'] },
  limb: { values: ['LF', 'RF', 'LF', 'RF', 'LF'] },
});

describe('rowsWhere', () => {
  test('without a wish gives all rows in order', () => {
    expect([...rowsWhere(table, {})]).toEqual([0, 1, 2, 3, 4]);
  });

  test('keeps the rows for which the filter is true; where it is missing the row is not seen', () => {
    expect([...rowsWhere(table, { filter: 'toe < 53' })]).toEqual([0, 2, 4]);
    expect([...rowsWhere(table, { filter: '!(toe < 53)' })]).toEqual([3]);
    expect([...rowsWhere(table, { filter: "limb == 'LF' && toe < mean(toe)" })]).toEqual([2, 4]);
  });

  test('sorts numbers by size, equal ones in the table’s order, missing ones last either way', () => {
    expect([...rowsWhere(table, { sort: { by: 'toe' } })]).toEqual([2, 4, 0, 3, 1]);
    expect([...rowsWhere(table, { sort: { by: 'toe', order: 'descending' } })]).toEqual([3, 0, 2, 4, 1]);
  });

  test('sorts text as a book’s index does, with numbers in it by size', () => {
    expect([...rowsWhere(table, { sort: { by: 'horse' } })]).toEqual([1, 4, 2, 0, 3]);
    expect([...rowsWhere(table, { sort: { by: 'horse', order: 'descending' } })]).toEqual([0, 2, 4, 1, 3]);
  });

  test('takes 07 and 7 for equal, so that the next column decides', () => {
    const stalls = plainTable({
      stall: { values: ['7', '07', '7', '6'] },
      toe: { values: Float64Array.of(3, 1, 2, 9) },
    });
    expect([...rowsWhere(stalls, { sort: [{ by: 'stall' }, { by: 'toe' }] })]).toEqual([3, 1, 2, 0]);
  });

  test('sorts by several columns, the first deciding', () => {
    const sort = [{ by: 'limb', order: 'descending' }, { by: 'toe' }] as const;
    expect([...rowsWhere(table, { sort })]).toEqual([3, 1, 2, 4, 0]);
    expect([...rowsWhere(table, { sort, filter: "limb == 'LF'" })]).toEqual([2, 4, 0]);
  });

  test('refuses a filter that can’t be read or is no yes/no, and an unknown column', () => {
    expect(() => rowsWhere(table, { filter: 'toe >' })).toThrow(FormulaError);
    expect(() => rowsWhere(table, { filter: 'toe' })).toThrow(
      'A filter says yes or no for each row, and this gives numbers',
    );
    expect(() => rowsWhere(table, { filter: 'horse' })).toThrow('this gives text');
    expect(() => rowsWhere(table, { sort: { by: 'heel' } })).toThrow('There is no column heel');
  });

  test('gives each row that passes once, in order of the column', () => {
    const cell = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.constant(Number.NaN));
    fc.assert(
      fc.property(fc.array(cell), (cells) => {
        const values = Float64Array.from(cells);
        const rows = [
          ...rowsWhere(plainTable({ x: { values } }), { sort: { by: 'x' }, filter: 'is_missing(x) || x > -2' }),
        ];
        const expected = [...cells.keys()]
          .filter((row) => !(cells[row] <= -2))
          .sort((a, b) => (Number.isNaN(cells[a]) ? 9 : cells[a]) - (Number.isNaN(cells[b]) ? 9 : cells[b]) || a - b);
        expect(rows).toEqual(expected);
      }),
    );
  });

  test('is a view: the sheet stays as it is, and a later look sees later edits', () => {
    const sheet = Sheet.from({ x: { values: Float64Array.of(3, 1, 2) } }).add({ name: 'y', formula: '-x' });
    expect([...sheet.rowsWhere({ sort: { by: 'y' } })]).toEqual([0, 2, 1]);
    expect([...sheet.column('x').values]).toEqual([3, 1, 2]);
    sheet.set('x', 1, 9);
    expect([...sheet.rowsWhere({ sort: { by: 'y' }, filter: 'x > 2' })]).toEqual([1, 0]);
  });
});

import { expect, test } from 'vitest';
import { columnLengths, columnWidths } from '../../../lib/page/sheet/columnWidths.ts';
import { shownColumns } from '../../../lib/page/sheet/shownColumns.ts';
import { Sheet } from '../../../lib/sheet/sheet.ts';

const sum = (widths: readonly number[]) => widths.reduce((total, width) => total + width, 0);

test('a column asks for its longest word, wherever it stands, and for a day in full', () => {
  const names = Array.from({ length: 100 }, (_, row) => (row === 99 ? 'Wilhelmina von der Obermühle' : 'Fern'));
  const sheet: Sheet = Sheet.from({
    horse_id: { values: names },
    date: { kind: 'date', values: new Float64Array(100).fill(20_000) },
  });
  const columns = shownColumns(sheet, undefined, { length: 'mm', mass: 'kg' });
  const data = columns.map(({ name }) => sheet.column(name));
  const rows = Uint32Array.from(names.keys());
  expect(columnLengths(columns, data, rows)).toEqual([28, '2024-10-04'.length]);
});

test('every column has room for what it asks, long words up to a limit, the last without one', () => {
  expect(columnWidths([10, 60, 60], 8, 0)).toEqual([10 * 8 + 20, 26 * 8 + 20, 60 * 8 + 20]);
});

test('long words take what room is left over, each by what it lacks, and no more than they ask', () => {
  const [usual, asked] = [columnWidths([10, 40, 60, 7], 8, 0), [100, 340, 500, 76]];
  const some = columnWidths([10, 40, 60, 7], 8, sum(usual) + 96);
  expect(sum(some)).toBeGreaterThan(sum(usual) + 93);
  expect(sum(some)).toBeLessThanOrEqual(sum(usual) + 96);
  expect(some[0]).toBe(100);
  expect(some[2] - usual[2]).toBeGreaterThan(some[1] - usual[1]);
  expect(columnWidths([10, 40, 60, 7], 8, 5000)).toEqual(asked);
});

import { expect, test } from 'vitest';
import { previewColumn } from '../../../lib/page/sheet/previewColumn.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';

const table = plainTable({
  width_mm: { unit: 'mm', values: Float64Array.of(100, 90) },
  angle_deg: { unit: 'deg', values: Float64Array.of(52, 50) },
});

test('a formula shows its unit and its values', () => {
  expect(previewColumn(table, { formula: 'width_mm * 2' })).toMatchObject({
    column: { unit: 'mm', values: Float64Array.of(200, 180) },
  });
  expect(previewColumn(table, { formula: 'width_mm * 2', unit: 'cm' })).toMatchObject({
    column: { unit: 'cm', values: Float64Array.of(20, 18) },
  });
  expect(previewColumn(table, { formula: 'angle_deg > 51' })).toMatchObject({ column: { kind: 'boolean' } });
  expect(previewColumn(table, { formula: 'angle_deg > 51 ? "steep" : "low"' })).toMatchObject({
    column: { kind: 'text' },
  });
});

test('what is wrong has a place', () => {
  expect(previewColumn(table, { formula: '1 + width_mm + angle_deg' })).toMatchObject({ start: 0, end: 24 });
  expect(previewColumn(table, { formula: 'width_mm + nothing' })).toMatchObject({ start: 11, end: 18 });
  expect(previewColumn(table, { formula: 'width_mm +' })).toHaveProperty('message');
  expect(previewColumn(table, { formula: 'width_mm', unit: 'bananas' })).toHaveProperty('message');
  expect(previewColumn(table, { formula: 'constructor.constructor("x")' })).toHaveProperty('message');
});

test('no formula shows nothing', () => {
  expect(previewColumn(table, { formula: ' ' })).toBeUndefined();
});

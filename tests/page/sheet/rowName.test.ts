import { expect, test } from 'vitest';
import { rowName } from '../../../lib/page/sheet/rowName.ts';
import { Sheet } from '../../../lib/sheet/sheet.ts';

const feet = Sheet.from({
  horse_id: { values: ['Thistle', ''] },
  date: { kind: 'date', values: Float64Array.of(0, Number.NaN) },
  repeat: { values: Float64Array.of(2, Number.NaN), title: 'Repeat' },
});

test('a row is named by what tells it apart', () => {
  expect(rowName(feet, ['horse_id', 'limb', 'date', 'repeat'], 0)).toBe('Thistle, 1970-01-01, repeat 2');
});

test('a row of which nothing is said yet has words too', () => {
  expect(rowName(feet, ['horse_id', 'date', 'repeat'], 1)).toBe('a foot without a name yet');
});

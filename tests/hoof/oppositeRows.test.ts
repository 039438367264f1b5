import { expect, it } from 'vitest';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import { oppositeRows } from '../../lib/hoof/oppositeRows.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

const feet = {
  horse_id: { values: ['Ada', 'Ada', 'Ada', 'Bea'] },
  date: { kind: 'date', values: Float64Array.of(1, 1, 1, 1) },
  limb: { values: ['LF', 'RF', 'LH', 'RH'] },
} as const;

it('leads to the same horse’s other foot of the pair, and nowhere where that was not measured', () => {
  expect([...oppositeRows(FootSheet.from(feet))]).toEqual([1, 0, -1, -1]);
});

it('refuses a table that knows nothing of feet', () => {
  expect(() => oppositeRows(plainTable(feet))).toThrow(/opposite is no function or relation/);
});

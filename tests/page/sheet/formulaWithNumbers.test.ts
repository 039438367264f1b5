import { expect, test } from 'vitest';
import { formulaWithNumbers, quantityOf } from '../../../lib/page/sheet/formulaWithNumbers.ts';
import type { Columns } from '../../../lib/sheet/column.ts';
import { Sheet } from '../../../lib/sheet/sheet.ts';

const units = { length: 'mm', mass: 'kg' } as const;
const relations = [
  { name: 'opposite', words: "the other side's", match: ['horse'], swap: { limb: { LF: 'RF', RF: 'LF' } } },
];

function shown(formula: string, row = 0, given: Partial<typeof units> = {}): string {
  const sheet: Sheet = Sheet.from<Columns>(
    {
      horse: { values: ['A', 'A', 'B'] },
      limb: { values: ['LF', 'RF', 'LF'] },
      inside_mm: { unit: 'mm', values: Float64Array.of(52, 50, Number.NaN) },
      outside_mm: { unit: 'mm', values: Float64Array.of(48, 49, 47) },
    },
    [],
    { relations, computed: [{ name: 'x', formula }] },
  );
  return formulaWithNumbers(sheet.lineage('x', row), { ...units, ...given });
}

test('columns give way to their numbers with units', () => {
  expect(shown('inside_mm - outside_mm')).toBe('52.0 mm − 48.0 mm');
  expect(shown('2 * (inside_mm - outside_mm) / inside_mm')).toBe('2 × (52.0 mm − 48.0 mm) ÷ 52.0 mm');
});

test('a column named twice gives way twice', () => {
  expect(shown('inside_mm + inside_mm')).toBe('52.0 mm + 52.0 mm');
});

test('what is missing is said', () => {
  expect(shown('inside_mm - outside_mm', 2)).toBe('missing − 47.0 mm');
});

test('another row and a group stand as their one number', () => {
  expect(shown('inside_mm - opposite(inside_mm)')).toBe('52.0 mm − 50.0 mm');
  expect(shown('outside_mm - mean(outside_mm, horse)')).toBe('48.0 mm − 48.5 mm');
});

test('words stand in quotes, and a branch that was not taken keeps its own', () => {
  expect(shown('limb == "LF" ? inside_mm : outside_mm')).toBe('“LF” == "LF" ? 52.0 mm : outside_mm');
});

test('a value is said as its column’s kind has it', () => {
  const cell = { column: 'x', row: 0, unit: 'd', from: [] };
  expect(quantityOf({ ...cell, value: 1 }, units, false, 'boolean')).toBe('yes');
  expect(quantityOf({ ...cell, value: 0 }, units, false, 'date')).toBe('1970-01-01');
  expect(quantityOf({ ...cell, value: '' }, units)).toBe('missing');
  expect(quantityOf({ ...cell, unit: 'mm', value: 4, error: 0.8 }, units, true)).toBe('4.0 ± 0.8 mm');
});

import { expect, test } from 'vitest';
import { cellText } from '../../../lib/page/sheet/cellText.ts';
import { toColumn } from '../../../lib/sheet/column.ts';

const shown = {
  name: 'a',
  title: 'A',
  kind: 'number',
  shownUnit: 'mm',
  symbol: 'mm',
  factor: 1,
  whole: false,
} as const;

test('a number has the decimals of its unit', () => {
  const column = toColumn({ unit: 'mm', values: Float64Array.of(80, -1.26, Number.NaN) });
  expect(cellText(column, 0, shown)).toEqual({ value: '80.0', error: '' });
  expect(cellText(column, 1, shown).value).toBe('−1.3');
});

test('a count has no decimals', () => {
  expect(cellText(toColumn({ values: Float64Array.of(2) }), 0, { ...shown, shownUnit: '1', whole: true }).value).toBe(
    '2',
  );
});

test('a missing value has no text', () => {
  expect(cellText(toColumn({ values: Float64Array.of(Number.NaN) }), 0, shown)).toEqual({ value: '', error: '' });
  expect(cellText(toColumn({ values: [''] }), 0, shown)).toEqual({ value: '', error: '' });
});

test('value and error turn into the reader’s unit together', () => {
  const column = toColumn({ unit: 'mm', values: Float64Array.of(25.4), error: Float64Array.of(2.54) });
  const inches = { ...shown, shownUnit: '[in_i]', symbol: 'in', factor: 1 / 25.4 };
  expect(cellText(column, 0, inches)).toEqual({ value: '1.00', error: '0.10' });
});

test('days are dates, ones and zeros are yes and no', () => {
  expect(cellText(toColumn({ kind: 'date', values: Float64Array.of(20_454) }), 0, shown).value).toBe('2026-01-01');
  const shod = toColumn({ kind: 'boolean', values: Float64Array.of(1, 0) });
  expect([cellText(shod, 0, shown).value, cellText(shod, 1, shown).value]).toEqual(['yes', 'no']);
});

test('text is shown as it is', () => {
  expect(cellText(toColumn({ values: ['<script>'] }), 0, shown).value).toBe('<script>');
});

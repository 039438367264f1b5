import { expect, test } from 'vitest';
import { editText, typedNumber } from '../../../lib/page/sheet/editText.ts';
import { TextColumn, toColumn } from '../../../lib/sheet/column.ts';

const one = { name: 'a', factor: 1 };

test('a number is begun with all its digits, in the reader’s unit, without a tail', () => {
  const lengths = toColumn({ unit: 'mm', values: Float64Array.of(82.55, 84.25, Number.NaN) });
  expect(editText(lengths, 0, { name: 'a', factor: 1 / 25.4 })).toBe('3.25');
  expect(editText(lengths, 1, one)).toBe('84.25');
  expect(editText(lengths, 2, one)).toBe('');
});

test('dates, answers and words are begun as they are written', () => {
  expect(editText(toColumn({ kind: 'date', values: Float64Array.of(0) }), 0, one)).toBe('1970-01-01');
  expect(editText(toColumn({ kind: 'boolean', values: Float64Array.of(1, 0) }), 1, one)).toBe('no');
  expect(editText(TextColumn.from(['LF']), 0, one)).toBe('LF');
});

test('a typed number is shown as it was typed, with its unit’s decimals at least', () => {
  expect(typedNumber(52, 'deg', false)).toBe('52.0');
  expect(typedNumber(51.25, 'deg', false)).toBe('51.25');
  expect(typedNumber(2, '1', true)).toBe('2');
  expect(typedNumber(-3.5, 'mm', false)).toBe('−3.5');
});

test('another unit brings no row of decimals', () => {
  expect(typedNumber(85 / 25.4, '[in_i]', false)).toMatch(/^3\.3\d?$/);
});

import { expect, test } from 'vitest';
import { counted } from '../../lib/words/counted.ts';
import { dayOrder } from '../../lib/words/dayOrder.ts';
import { fixed } from '../../lib/words/fixed.ts';
import { midSentence } from '../../lib/words/midSentence.ts';
import { shownDay } from '../../lib/words/shownDay.ts';
import { wholeNumber } from '../../lib/words/wholeNumber.ts';

test('English has a decimal point, small nouns within a sentence, and days as year, month and day', () => {
  expect(fixed(-12.345, 1)).toBe('-12.3');
  expect(midSentence('Toe angle')).toBe('toe angle');
  expect([0, 20_454, -1].map(shownDay)).toEqual(['1970-01-01', '2026-01-01', '1969-12-31']);
  expect(dayOrder).toBeUndefined();
});

test('one has a form of its own in English, and none counts as several', () => {
  const feet = (count: number) => counted(count, { one: `${count} foot`, other: `${count} feet` });
  expect([0, 1, 2].map(feet)).toEqual(['0 feet', '1 foot', '2 feet']);
});

test('thousands are set apart', () => {
  expect([0, 999, 1234, 1_234_567].map(wholeNumber)).toEqual(['0', '999', '1,234', '1,234,567']);
});

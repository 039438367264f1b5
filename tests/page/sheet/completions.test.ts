import { expect, test } from 'vitest';
import { completions, wordAt } from '../../../lib/page/sheet/completions.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';

const numbers = { values: Float64Array.of(1) };
const table = plainTable(
  { toe_angle_deg: numbers, toe_length_mm: numbers, 'my own': numbers, heel_length_mm: numbers },
  [{ name: 'opposite', words: "the other side's", match: [] }],
);
const titles: Record<string, string> = { toe_angle_deg: 'Toe angle', heel_length_mm: 'Heel length' };
const offered = (word: string) => completions(word, table, (name) => titles[name] ?? name);

test('the word at a place is what stands before it', () => {
  expect(wordAt('mean(toe_l', 10)).toEqual({ start: 5, word: 'toe_l' });
  expect(wordAt('a + ', 4)).toEqual({ start: 4, word: '' });
});

test('columns are found by the beginning, the middle and the title, in that order', () => {
  expect(offered('toe').map(({ text }) => text)).toEqual(['toe_angle_deg', 'toe_length_mm']);
  expect(offered('length').map(({ text }) => text)).toEqual(['toe_length_mm', 'heel_length_mm']);
  expect(offered('heel l').map(({ text }) => text)).toEqual(['heel_length_mm']);
});

test('functions and relations are offered with their brackets', () => {
  expect(offered('opp')).toEqual([{ name: 'opposite(x)', about: "the other side's x", text: 'opposite(' }]);
  expect(offered('med')[0].text).toBe('median(');
});

test('a column whose name is no word is written so that a formula can read it', () => {
  expect(offered('my')[0].text).toBe('column("my own")');
});

test('nothing is offered for nothing, nor for a word that is complete', () => {
  expect(offered('')).toEqual([]);
  expect(offered('toe_angle_deg')).toEqual([]);
  expect(offered('constructor')).toEqual([]);
});

test('no more than eight are offered', () => {
  expect(offered('a').length).toBe(8);
});

import { expect, test } from 'vitest';
import { context, understoodWord } from '../../lib/hoof/context.ts';
import { comparisons } from '../../lib/hoof/intervals.ts';
import { cellWord } from '../../lib/words/cellWord.ts';
import { gathered } from '../../scripts/words/gather.ts';

const texts = context.filter(({ kind, words }) => kind === 'text' && words !== undefined);
const stored = texts.flatMap(({ name, words = {} }) => Object.keys(words).map((word) => ({ name, word })));
const quarters = ['Jan–Mar', 'Apr–Jun', 'Jul–Sep', 'Oct–Dec'];

test.each([
  ...stored,
  ...comparisons.map((word) => ({ name: 'compared', word })),
  ...quarters.map((word) => ({ name: 'season', word })),
])('English shows $word of the column $name as it is stored', ({ name, word }) => {
  expect(cellWord(name, word)).toBe(word);
});

test('every word that a column of its own words stores can be said in other languages', () => {
  const words = gathered();
  expect(stored.filter(({ word }) => !words.get(word)?.files.includes('lib/words/cellWord.ts'))).toEqual([]);
});

test('what is shown is understood where it is typed', () => {
  for (const column of texts)
    for (const word of Object.keys(column.words ?? {}))
      expect(understoodWord(column, cellWord(column.name, word))).toBe(word);
});

test('a name stays a name, and a column may be called anything', () => {
  expect(cellWord('horse_id', 'before')).toBe('before');
  expect(cellWord('constructor', 'name')).toBe('name');
  expect(cellWord('moment', 'constructor')).toBe('constructor');
});

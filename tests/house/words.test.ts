import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compared, gathered, listText } from '../../scripts/words/gather.ts';
import { languages, wordsOf } from '../../scripts/words/languages.ts';
import { filesIn, root } from './sources.ts';
import { unmarked } from './unmarked.ts';

const words = gathered();
const filled = (text: string) => [...new Set(text.match(/\{\w+\}/g))].sort();
const read = (file: string) => readFileSync(join(root, file), 'utf8');

/** Folders whose words are programmers' or other people's. */
const foreign =
  /^lib\/(geometry|stats|words|large)\/|^lib\/(cli|report)\.ts$|^lib\/hoof\/(bibliography|normalise|limbs)\.ts$/;
const shown = [...filesIn('lib', /\.tsx?$/), ...filesIn('notebooks', /\.tsx?$/)].filter((file) => !foreign.test(file));

test('the list of words is the one that the sources say (npm run words writes it anew)', () => {
  expect(read('lib/words/en.json')).toBe(listText(words));
});

test.each(shown)('%s marks every word that a reader may see', (file) => {
  expect(unmarked(read(file), file.endsWith('x'))).toEqual([]);
});

test('what is not marked is found', () => {
  expect(unmarked("const a = 'this is a sentence'; say`so is this one`;", false)).toEqual(['this is a sentence']);
  expect(unmarked('const a = <p>Words</p>;', true)).toEqual(['Words']);
  expect(unmarked("throw new TypeError('for those who write programs')", false)).toEqual([]);
});

test('there is another language', () => {
  expect(languages()).toContain('de');
});

describe.each(languages())('the words in %s', (language) => {
  const table = wordsOf(language);

  test('are complete, and none is left of what nobody says any more', () => {
    expect(compared(language, words)).toEqual({ lacking: [], left: [] });
  });

  test('fill in what the English fills in, and keep the spaces at its ends', () => {
    const wrong = Object.entries(table).filter(
      ([key, text]) =>
        filled(text).join() !== filled(key).join() ||
        /^\s*/.exec(text)![0] !== /^\s*/.exec(key)![0] ||
        /\s*$/.exec(text)![0] !== /\s*$/.exec(key)![0],
    );
    expect(wrong).toEqual([]);
  });

  test('link to the same pages', () => {
    const links = (text: string) => (text.match(/\]\([^)]*\)/g) ?? []).sort();
    expect(Object.entries(table).filter(([key, text]) => links(text).join() !== links(key).join())).toEqual([]);
  });
});

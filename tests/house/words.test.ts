import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Forms } from '../../lib/words/counted.ts';
import { compared, gathered, listText } from '../../scripts/words/gather.ts';
import { languages, wordsOf } from '../../scripts/words/languages.ts';
import { filesIn, root } from './sources.ts';
import { unmarked } from './unmarked.ts';

const words = gathered();
const filled = (text: string) => [...new Set(text.match(/\{\w+\}/g))].sort();
const read = (file: string) => readFileSync(join(root, file), 'utf8');

const formsOf = (own: string | Forms): { form?: string; text: string }[] =>
  typeof own === 'string' ? [{ text: own }] : Object.entries(own).map(([form, text]) => ({ form, text }));

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

  /** Every text of the table, each form of words that change with a number by itself. */
  const texts = Object.entries(table).flatMap(([key, own]) => formsOf(own).map((form) => ({ key, ...form })));
  const rules = new Intl.PluralRules(language);
  const categories = rules.resolvedOptions().pluralCategories.toSorted().join();

  test('have all the forms that the language has where they change with a number, and only there', () => {
    const expected = new Map([...words].map(([key, { one }]) => [key, one === undefined ? undefined : categories]));
    const wrong = Object.entries(table).filter(([key, own]) => {
      const forms = typeof own === 'string' ? undefined : Object.keys(own);
      return forms?.toSorted().join() !== expected.get(key);
    });
    expect(wrong).toEqual([]);
  });

  test('fill in what the English fills in, and keep the spaces at its ends', () => {
    // A form for one number alone need not say it.
    const numbers = Array.from({ length: 200 }, (_, count) => rules.select(count));
    const alone = (form?: string) => numbers.filter((own) => own === form).length === 1;
    const wrong = texts.filter(({ key, text, form }) => {
      const counts = words.get(key)?.counts?.map((name) => `{${name}}`) ?? [];
      const all = filled(key).filter((name) => !(alone(form) && counts.includes(name)));
      return (
        filled(text).some((name) => !filled(key).includes(name)) ||
        all.some((name) => !filled(text).includes(name)) ||
        /^\s*/.exec(text)![0] !== /^\s*/.exec(key)![0] ||
        /\s*$/.exec(text)![0] !== /\s*$/.exec(key)![0]
      );
    });
    expect(wrong).toEqual([]);
  });

  test('link to the same pages', () => {
    const links = (text: string) => (text.match(/\]\([^)]*\)/g) ?? []).sort();
    expect(texts.filter(({ key, text }) => links(text).join() !== links(key).join())).toEqual([]);
  });
});

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { inLanguage, type Words } from './inLanguage.ts';

const folder = fileURLToPath(new URL('../../lib/words/', import.meta.url));

/** The languages besides English, by their BCP 47 codes: one table each in lib/words. */
export function languages(): string[] {
  return readdirSync(folder)
    .filter((file) => /^[a-z]{2,3}(-\w+)*\.json$/.test(file) && file !== 'en.json')
    .map((file) => file.replace('.json', ''))
    .sort();
}

export function wordsOf(language: string): Words {
  return JSON.parse(readFileSync(join(folder, `${language}.json`), 'utf8')) as Words;
}

/** Builds the words of a language into the code, so that pages carry no table of words and no other language. */
export function saying(words: Words): Plugin {
  return {
    name: 'evenhoof-words',
    enforce: 'pre',
    transform: {
      filter: { id: /\/(lib|notebooks)\/.*\.tsx?$/, code: 'say`' },
      handler: (code, id) => (id.endsWith('/lib/words/say.ts') ? undefined : inLanguage(code, words, id.endsWith('x'))),
    },
  };
}

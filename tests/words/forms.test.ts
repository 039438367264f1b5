import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';
import { expect, test } from 'vitest';
import type { Forms } from '../../lib/words/counted.ts';
import type { Words } from '../../scripts/words/inLanguage.ts';
import { saying } from '../../scripts/words/languages.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** What `leftOut` says of rows in a language that is made up of these words alone. */
async function leftOutRows(code: string, forms: Forms): Promise<(count: number) => string> {
  const words: Words = { en: code, '{count} rows without a measurement left out.': forms };
  const { module } = await runnerImport<typeof import('../../lib/views/chart.ts')>('lib/views/chart.ts', {
    root,
    configFile: false,
    plugins: [saying(words)],
  });
  return (count) => module.leftOut(count, 'rows');
}

test('cells show the words of the language, quarters with its months, and both they and the stored ones are understood', async () => {
  const words: Words = { en: 'de', before: 'vorher', 'after to before': 'nachher bis vorher' };
  const load = async <Module>(file: string) =>
    (await runnerImport<Module>(file, { root, configFile: false, plugins: [saying(words)] })).module;
  const { cellWord } = await load<typeof import('../../lib/words/cellWord.ts')>('lib/words/cellWord.ts');
  expect(cellWord('moment', 'before')).toBe('vorher');
  expect(cellWord('compared', 'after to before')).toBe('nachher bis vorher');
  expect(['Jan–Mar', 'Oct–Dec'].map((quarter) => cellWord('season', quarter))).toEqual(['Jan–Mär', 'Okt–Dez']);
  const { contextOf, understoodWord } = await load<typeof import('../../lib/hoof/context.ts')>('lib/hoof/context.ts');
  expect(['Vorher', 'before', 'pre trim'].map((said) => understoodWord(contextOf('moment')!, said))).toEqual([
    'before',
    'before',
    'before',
  ]);
});

test('Polish has four forms, by the last figures of a number', async () => {
  const said = await leftOutRows('pl', {
    one: 'Pominięto {count} wiersz bez pomiaru.',
    few: 'Pominięto {count} wiersze bez pomiaru.',
    many: 'Pominięto {count} wierszy bez pomiaru.',
    other: 'Pominięto {count} wiersza bez pomiaru.',
  });
  const rows = (count: number) => said(count).split(' ').slice(1, 3).join(' ');
  expect([1, 2, 5, 12, 21, 22, 1.5].map(rows)).toEqual([
    '1 wiersz',
    '2 wiersze',
    '5 wierszy',
    '12 wierszy',
    '21 wierszy',
    '22 wiersze',
    '1.5 wiersza',
  ]);
});

test('Arabic has six, and some that say their number by themselves', async () => {
  const said = await leftOutRows('ar', {
    zero: 'لا صفوف',
    one: 'صف واحد',
    two: 'صفان',
    few: '{count} صفوف',
    many: '{count} صفًا',
    other: '{count} صف',
  });
  expect([1, 2, 3, 11, 100].map(said)).toEqual(['صف واحد', 'صفان', '3 صفوف', '11 صفًا', '100 صف']);
});

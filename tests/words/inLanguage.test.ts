// biome-ignore-all lint/suspicious/noTemplateCurlyInString: these are source texts
import { expect, test } from 'vitest';
import { inLanguage } from '../../scripts/words/inLanguage.ts';
import { saidIn } from '../../scripts/words/saidIn.ts';

const words = {
  'The herd': 'Die Herde',
  '{count} of {horse}’s feet': 'von {horse}: {count} Hufe',
  feet: 'Hufe',
  '{1} {2} measured': '{1} {2} gemessen',
};

test('a marked text is found with names for what is filled in', () => {
  const [said] = saidIn('say`${count} of ${foot.horse}’s ${word()} and ${1 + 1}, again ${foot.horse}, ${other.horse}`');
  expect(said.key).toBe('{count} of {horse}’s {word} and {4}, again {horse}, {horse2}');
});

test('plain words become plain strings, within tags too', () => {
  expect(inLanguage('const title = say`The herd`;', words)).toBe('const title = "Die Herde";');
  expect(inLanguage('<h1 title={say`The herd`}>{say`The herd`}</h1>', words, true)).toBe(
    '<h1 title={"Die Herde"}>{"Die Herde"}</h1>',
  );
});

test('what is filled in goes where the other language has it, words inside it translated too', () => {
  expect(inLanguage('say`${count} of ${foot.horse}’s feet`', words)).toBe('`von ${foot.horse}: ${count} Hufe`');
  expect(inLanguage('say`${n === 1 ? say`one` : n} ${say`feet`} measured`', words)).toBe(
    '`${n === 1 ? "one" : n} ${"Hufe"} gemessen`',
  );
});

test('what has no translation stays English, and signs that mean something in a template are kept', () => {
  expect(inLanguage('say`a \\`quoted\\` ${price} \\${no}`', {})).toBe('`a \\`quoted\\` ${price} \\${no}`');
});

const rows = 'counted(rows.length, { one: say`A row of ${horse()}`, other: say`${rows.length} rows of ${horse()}` })';

test('words that change with a number are one wording, named by its English for several', () => {
  const [said] = saidIn(rows);
  expect(said).toMatchObject({ key: '{rows} rows of {horse}', one: 'A row of {horse}' });
  expect(said.filled.map(({ name, counts }) => [name, counts])).toEqual([
    ['rows', true],
    ['horse', false],
  ]);
  expect(inLanguage(rows, {})).toBe(
    'counted(rows.length, { one: `A row of ${horse()}`, other: `${rows.length} rows of ${horse()}` })',
  );
});

test('another language brings the forms that it has', () => {
  const russian = { one: '{rows} строка: {horse}', few: '{rows} строки: {horse}', many: '{rows} строк: {horse}' };
  expect(inLanguage(rows, { '{rows} rows of {horse}': { ...russian, other: '{rows} строки: {horse}' } })).toBe(
    'counted(rows.length, { one: `${rows.length} строка: ${horse()}`, few: `${rows.length} строки: ${horse()}`, ' +
      'many: `${rows.length} строк: ${horse()}`, other: `${rows.length} строки: ${horse()}` })',
  );
});

test('a form may leave out the number, but nothing else', () => {
  const one = (text: string) => ({ '{rows} rows of {horse}': { one: text, other: '{rows} Zeilen von {horse}' } });
  expect(inLanguage(rows, one('Eine Zeile von {horse}'))).toContain('one: `Eine Zeile von ${horse()}`');
  expect(() => inLanguage(rows, one('{rows} Zeile'))).toThrow(/leaves out horse/);
});

test('a translation has forms where the words change with a number, and only there', () => {
  expect(() => inLanguage(rows, { '{rows} rows of {horse}': '{rows} Zeilen von {horse}' })).toThrow(/has one form/);
  expect(() => inLanguage('say`feet`', { feet: { one: 'Huf', other: 'Hufe' } })).toThrow(/does not change/);
});

test('both forms are marked, and one fills in no more than several', () => {
  expect(() => saidIn("counted(n, { one: 'a row', other: say`${n} rows` })")).toThrow(/each marked by say/);
  expect(() => saidIn('counted(n, { one: say`${n} row of ${horse}`, other: say`${n} rows` })')).toThrow(/filled in/);
});

test('a translation that leaves something out is refused', () => {
  expect(() =>
    inLanguage('say`${count} of ${foot.horse}’s feet`', { '{count} of {horse}’s feet': '{count} Hufe' }),
  ).toThrow(/leaves out horse/);
});

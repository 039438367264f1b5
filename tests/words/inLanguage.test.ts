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

test('a translation that leaves something out is refused', () => {
  expect(() =>
    inLanguage('say`${count} of ${foot.horse}’s feet`', { '{count} of {horse}’s feet': '{count} Hufe' }),
  ).toThrow(/leaves out horse/);
});

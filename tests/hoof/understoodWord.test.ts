import { expect, it } from 'vitest';
import { contextOf, understoodWord } from '../../lib/hoof/context.ts';

const understood = (name: string, text: string) => understoodWord(contextOf(name)!, text);

it('words are understood through capitals, lines, dashes and blanks', () => {
  expect(understood('moment', '  Before__ - trim ')).toBe('before');
  expect(understood('moment', 'AFTER-FARRIER')).toBe('after');
  expect(understood('moment', 'before/after')).toBeUndefined();
});

it('yes and no are understood in a column without words of its own', () => {
  expect(['x', 'ON', 'false', '0', 'so so'].map((text) => understood('hair_over_hairline', text))).toEqual([
    ...['yes', 'yes', 'no', 'no', undefined],
  ]);
});

it('other words stay as they are in an open column and in one without words, less the blanks round them', () => {
  expect(understood('build', ' Trakehner ')).toBe('Trakehner');
  expect(understood('farrier', ' M. Alder ')).toBe('M. Alder');
  expect(understood('moment', ' Alder ')).toBeUndefined();
});

it('a column that nobody knows has no row', () => {
  expect(contextOf('constructor')).toBeUndefined();
});

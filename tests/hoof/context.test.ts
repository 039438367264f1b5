import { describe, expect, it } from 'vitest';
import { describeColumn } from '../../lib/files/describeColumn.ts';
import { context, contextOf, understoodWord } from '../../lib/hoof/context.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { columnsOf } from './feet.ts';

describe('the words people write', () => {
  it.each([
    ['moment', 'Pre-Trim', 'before'],
    ['moment', ' after_shoeing ', 'after'],
    ['moment', 'later', undefined],
    ['shod', 'Barefoot', 'no'],
    ['shod', 'TRUE', 'yes'],
    ['shod', 'sometimes', undefined],
    ['therapeutic', 'Y', 'yes'],
    ['work', 'new shoes', 'shoe'],
    ['work', 'glue-on', 'glue-on'],
    ['build', 'Draught', 'heavy'],
    ['observer', ' Ida ', 'Ida'],
    ['moment', 'constructor', undefined],
  ])('%s: %s', (name, text, word) => {
    expect(understoodWord(contextOf(name)!, text)).toBe(word);
  });

  it('mean one thing in a column', () => {
    for (const { words = {} } of context) {
      const said = Object.values(words).flat();
      expect(said.filter((word, i) => said.indexOf(word) !== i)).toEqual([]);
    }
  });
});

it('every column of a herd has a title, and its data dictionary says what it is', () => {
  const { feet, occasions, horses, visits, intervals } = herd({
    feet: columnsOf([{ horse_id: 'Bella', date: '2026-03-09', limb: 'LF' }]),
  });
  for (const sheet of [feet, occasions, horses, visits, intervals])
    for (const name of sheet.names) {
      expect(sheet.describe(name).title, name).not.toBe(name);
      expect(describeColumn(name).description ?? '', name).not.toBe('');
    }
});

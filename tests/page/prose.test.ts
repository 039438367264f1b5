import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asProse, readProse } from '../../lib/page/prose.ts';

test('a blank line parts paragraphs, other line breaks are spaces', () => {
  expect(readProse('one\ntwo\n\n  three ')).toEqual([
    [{ kind: 'text', text: 'one two' }],
    [{ kind: 'text', text: 'three' }],
  ]);
  expect(readProse(' \n ')).toEqual([]);
});

test('strong words and links are understood', () => {
  expect(readProse('a **b** [c](columns.html#d).')).toEqual([
    [
      { kind: 'text', text: 'a ' },
      { kind: 'strong', text: 'b' },
      { kind: 'text', text: ' ' },
      { kind: 'link', text: 'c', address: 'columns.html#d' },
      { kind: 'text', text: '.' },
    ],
  ]);
});

test('an address that could run a script stays text', () => {
  for (const address of ['javascript:alert', 'data:text/html,x', 'http://elsewhere', '//elsewhere', 'JaVaScript:x'])
    expect(readProse(`[x](${address})`)).toEqual([[{ kind: 'text', text: `[x](${address})` }]]);
});

test('markup stays text', () => {
  expect(readProse('<b>&amp;</b>')).toEqual([[{ kind: 'text', text: '<b>&amp;</b>' }]]);
});

test('asProse(text) comes out as typed, whatever was typed', () => {
  fc.assert(
    fc.property(fc.string(), fc.constantFrom('', '**', '[', '](#a)', '\\', '\n\n'), (left, right) => {
      const typed = left + right;
      const words = typed.replace(/\s+/g, ' ').trim();
      expect(readProse(asProse(typed))).toEqual(words === '' ? [] : [[{ kind: 'text', text: words }]]);
    }),
  );
});

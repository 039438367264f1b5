import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Dictionary, hashOf } from '../../lib/files/dictionary.ts';

function codesOf(texts: readonly string[]): { codes: number[]; texts: string[] } {
  const dictionary = new Dictionary();
  const codes = texts.map((text) => {
    const bytes = new TextEncoder().encode(`<${text}>`);
    return dictionary.code(bytes, 1, bytes.length - 1, hashOf(bytes, 1, bytes.length - 1));
  });
  return { codes, texts: dictionary.texts() };
}

describe('Dictionary', () => {
  it('gives each text one code, in the order in which texts come', () => {
    expect(codesOf(['LF', 'RF', 'LF', '', 'é', 'RF', ''])).toEqual({
      codes: [0, 1, 0, 2, 3, 1, 2],
      texts: ['LF', 'RF', '', 'é'],
    });
  });

  it('tells texts apart that fall on one place', () => {
    const dictionary = new Dictionary();
    const code = (text: string) => dictionary.code(Buffer.from(text), 0, text.length, 7);
    expect(['a', 'b', 'ab', 'a', 'ab', 'b'].map(code)).toEqual([0, 1, 2, 0, 2, 1]);
  });

  it('finds every text again, however many there are', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 6 }), { maxLength: 500 }), (texts) => {
        const { codes, texts: known } = codesOf(texts);
        expect(codes.map((code) => known[code])).toEqual(texts);
        expect(new Set(known).size).toBe(known.length);
      }),
    );
  });
});

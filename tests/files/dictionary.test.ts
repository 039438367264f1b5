import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Dictionary } from '../../lib/files/dictionary.ts';

function codesOf(texts: readonly string[]): { codes: number[]; texts: string[] } {
  const dictionary = new Dictionary();
  const codes = texts.map((text) => {
    const bytes = new TextEncoder().encode(`<${text}>`);
    return dictionary.code(bytes, 1, bytes.length - 1);
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

  it('tells texts apart that have one hash', () => {
    // Pairs of one FNV-1a hash of 32 bits: the first of unlike length, the second of like length.
    const texts = ['costarring', 'declinate', 'liquid', 'macallums'];
    expect(codesOf([...texts, ...texts]).codes).toEqual([0, 1, 2, 3, 0, 1, 2, 3]);
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

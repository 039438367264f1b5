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

  it('takes up the texts of another, and says which codes they have here', () => {
    const [ours, theirs] = [
      ['LF', 'é'],
      ['RF', 'LF', 'é', 'LH'],
    ].map((texts) => {
      const dictionary = new Dictionary();
      for (const text of texts)
        dictionary.code(new TextEncoder().encode(text), 0, new TextEncoder().encode(text).length);
      return dictionary;
    });
    expect([...ours.codesOf(theirs.packed())]).toEqual([2, 0, 1, 3]);
    expect(ours.texts()).toEqual(['LF', 'é', 'RF', 'LH']);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { guard, unguard } from '../../lib/files/guard.ts';
import { anyText } from './tables.ts';

describe('guard', () => {
  it('puts an apostrophe before what a spreadsheet would run', () => {
    for (const text of ['=1', '+1', '-1', '@a', '\t=1', '\r', '\n', ' =1', '＝1', "'=1"])
      expect(guard(text)).toBe(`'${text}`);
  });

  it('leaves other texts alone, apostrophes too', () => {
    for (const text of ['', 'a=1', "'a", "''", 'H-1', '5']) expect(guard(text)).toBe(text);
  });

  it('is undone by unguard, whatever the text', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(unguard(guard(text))).toBe(text);
      }),
      { numRuns: 3000 },
    );
  });

  it('leaves nothing that begins as a formula does', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(guard(text)).not.toMatch(/^[=+\-@\t\r]/);
      }),
      { numRuns: 3000 },
    );
  });
});

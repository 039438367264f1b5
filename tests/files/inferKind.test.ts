import { describe, expect, it } from 'vitest';
import { inferKind } from '../../lib/files/inferKind.ts';
import { plainNumber } from '../../lib/files/plainNumber.ts';

describe('inferKind', () => {
  it.each([
    [['52', 'NA', '-0.5', '1e5', '?'], 'number'],
    [['007', '8'], 'text'],
    [['52°'], 'text'],
    [['TRUE', 'false', ''], 'boolean'],
    [['2026-03-09', '-'], 'date'],
    [['2026-02-30'], 'text'],
    [['2026-03-09', '5'], 'text'],
    [['yes', 'no'], 'text'],
    [[], 'number'],
    [['NA'], 'number'],
  ] as const)('takes %j for %s', (texts, kind) => {
    expect(inferKind(texts, '.')).toBe(kind);
  });
});

describe('plainNumber', () => {
  it('reads plain numbers by the file’s decimal mark, and nothing else', () => {
    expect(['1', '+1.', '.5', '-0', '1E-2'].map((text) => plainNumber(text, '.', true))).toEqual([1, 1, 0.5, -0, 0.01]);
    expect(plainNumber('8,5', ',', true)).toBe(8.5);
    expect(plainNumber('007', '.', false)).toBe(7);
    for (const text of ['', '.', '007', '1,5', '1 000', '1e999', 'Infinity', '0x1', '1_000', '٣', '9'.repeat(500)])
      expect([text, plainNumber(text, '.', true)]).toEqual([text, Number.NaN]);
    expect(plainNumber('1.5', ',', true)).toBeNaN();
  });
});

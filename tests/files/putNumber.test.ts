import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { longestNumber, putNumber } from '../../lib/files/putNumber.ts';

function written(value: number): string {
  const bytes = new Uint8Array(longestNumber + 1);
  const end = putNumber(value, bytes, 1);
  return Buffer.from(bytes.subarray(1, end)).toString();
}

describe('putNumber', () => {
  it('writes every number to one decimal as JavaScript does, up to beyond a thousand', () => {
    const numbers = Array.from({ length: 20_041 }, (_, i) => (i - 10_020) / 10);
    expect(numbers.map(written)).toEqual(numbers.map(String));
  });

  it('keeps the sign of nothing, which reads back to the same bits', () => {
    expect([written(0), written(-0)]).toEqual(['0', '-0']);
  });

  it('writes what reads back to the same bits, and no longer than it says (law)', () => {
    const near = fc.tuple(fc.integer({ min: -10_000, max: 10_000 }), fc.integer({ min: -3, max: 3 }));
    const close = near.map(([tenths, ulps]) => (tenths / 10) * (1 + ulps * Number.EPSILON));
    fc.assert(
      fc.property(fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true }), close), (value) => {
        expect(Object.is(Number(written(value)), value)).toBe(true);
        expect(written(value).length).toBeLessThanOrEqual(longestNumber);
      }),
    );
  });
});

import { describe, expect, it } from 'vitest';
import { quantile, quantileSorted } from '../../lib/stats/quantile.ts';

describe('quantile', () => {
  it('uses type 7 where none is asked for', () => {
    expect(quantile([3, 1, 2, 10], 0.25)).toBe(1.75);
    expect(quantile([3, 1, 2, 10], 0.25)).toBe(quantile([3, 1, 2, 10], 0.25, 7));
  });
  it('gives the ends at 0 and 1 for every type', () => {
    for (const type of [1, 2, 3, 4, 5, 6, 7, 8, 9] as const) {
      expect(quantile([4, 9, 1], [0, 1], type)).toEqual([1, 9]);
    }
  });
  it('leaves out what is missing and gives NaN of nothing', () => {
    expect(quantile([NaN, 2, NaN, 4], 0.5)).toBe(3);
    expect(quantile([NaN], 0.5)).toBeNaN();
    expect(quantile([], 0.5)).toBeNaN();
    expect(quantile([1, 2], NaN)).toBeNaN();
    expect(quantile([null, 2] as unknown as number[], 0)).toBe(2);
  });
  it('gives the same by selection as by sorting', () => {
    const values = Float64Array.from({ length: 501 }, (_, i) => Math.sin(i * i) * 50);
    const sorted = values.slice().sort();
    for (let q = 0; q <= 1; q += 1 / 64)
      for (const type of [1, 2, 3, 4, 5, 6, 7, 8, 9] as const)
        expect(quantile(values, q, type)).toBe(quantileSorted(sorted, q, type));
  });
  it('leaves the caller’s numbers in their order', () => {
    const values = Float64Array.of(3, 1, 2);
    quantile(values, 0.5);
    quantile(values, [0.5]);
    expect([...values]).toEqual([3, 1, 2]);
  });
  it('returns a tied value exactly', () => {
    expect(quantile([0.1, 0.1, 0.1], 0.37)).toBe(0.1);
  });
  it('takes infinite values as values', () => {
    expect(quantile([1, Infinity, 2], 0.5)).toBe(2);
    expect(quantile([1, Infinity], 1)).toBe(Infinity);
  });
  it('refuses a share outside 0 to 1 and says what to do', () => {
    expect(() => quantile([1, 2], 50)).toThrow('A share from 0 to 1 was expected, found 50; for percent divide by 100');
    expect(() => quantile([1, 2], -0.1)).toThrow(TypeError);
    expect(() => quantileSorted([], 2)).toThrow(TypeError);
  });
});

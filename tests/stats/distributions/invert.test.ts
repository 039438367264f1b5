import { describe, expect, it } from 'vitest';
import { invert } from '../../../lib/stats/distributions/invert.ts';

/** The Cauchy distribution, whose tails are so heavy that a Newton step from afar goes much too far. */
const cauchy = (x: number) => ({
  lower: Math.atan2(1, -x) / Math.PI,
  upper: Math.atan2(1, x) / Math.PI,
  density: 1 / (Math.PI * (1 + x * x)),
});

describe('invert', () => {
  it.each([1e-9, 0.001, 0.3, 0.5, 0.9, 0.9999])(
    'finds the quantile %d of the Cauchy distribution from anywhere',
    (p) => {
      for (const start of [-1e4, -20, 0, 20, 1e4]) {
        const found = invert(cauchy, { lower: p, upper: 1 - p }, start);
        // The quantile is −cot(πp).
        const expected = p === 0.5 ? 0 : -1 / Math.tan(Math.PI * p);
        expect(Math.abs(found - expected)).toBeLessThan(1e-10 * Math.max(1, Math.abs(expected)));
      }
    },
  );
  it('takes the smaller tail, which keeps its digits where the other is nearly 1', () => {
    const found = invert(cauchy, { lower: 1, upper: 1e-20 }, 0);
    expect(found * Math.PI * 1e-20).toBeCloseTo(1, 10);
  });
  it('asks no more often than Newton steps need', () => {
    let asked = 0;
    const counted = (x: number) => {
      asked++;
      return cauchy(x);
    };
    // With half below, 0 is known at once to be it; a step off the middle shrinks by its cube.
    expect(invert(counted, { lower: 0.5, upper: 0.5 }, 0)).toBe(0);
    expect(asked).toBe(1);
    asked = 0;
    invert(counted, { lower: 0.3, upper: 0.7 }, -0.7);
    expect(asked).toBeLessThan(8);
  });
  it('doubles its steps outwards, above as below', () => {
    // A density that promises nothing: every Newton step is refused, and only the bounds lead on.
    const blind = (x: number) => ({ ...cauchy(x), density: 0 });
    expect(invert(blind, { lower: 0.1, upper: 0.9 }, 50)).toBeCloseTo(-1 / Math.tan(0.1 * Math.PI), 9);
    expect(invert(blind, { lower: 0.9, upper: 0.1 }, -50)).toBeCloseTo(-1 / Math.tan(0.9 * Math.PI), 9);
  });
});

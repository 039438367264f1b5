import { describe, expect, it } from 'vitest';
import { rootBetween } from '../../lib/stats/rootBetween.ts';

describe('rootBetween', () => {
  it('finds a root to the last digits, also beyond the end that was given', () => {
    expect(rootBetween((x) => x * x - 2, 0, 1)).toBeCloseTo(Math.SQRT2, 14);
    expect(rootBetween((x) => Math.log(x / 1000), 1, 2)).toBeCloseTo(1000, 9);
    expect(rootBetween((x) => x - 3, 0, 3)).toBe(3);
  });

  it('is not stalled by a function that is flat at one end', () => {
    expect(rootBetween((x) => x ** 9 - 1e-9, 0, 5)).toBeCloseTo(0.1, 12);
    expect(rootBetween((x) => Math.tanh(50 * (x - 0.7)), 0, 1)).toBeCloseTo(0.7, 13);
  });

  it('says NaN where the function starts above zero or never rises to it', () => {
    expect(rootBetween((x) => x + 1, 0, 1)).toBeNaN();
    expect(rootBetween(() => -1, 0, 1)).toBeNaN();
    expect(rootBetween((x) => x - 1, 0, 0)).toBeNaN();
    expect(rootBetween(() => Number.NaN, 0, 1)).toBeNaN();
  });
});

import { describe, expect, it } from 'vitest';
import { normal } from '../../lib/stats/distributions/normal.ts';
import { normalQuantiles } from '../../lib/stats/normalQuantiles.ts';
import { random } from '../../lib/stats/random.ts';

describe('normalQuantiles', () => {
  it('sorts the values that are there and sets them beside their places, as ppoints of R does', () => {
    const { sorted, expected } = normalQuantiles([3, Number.NaN, 1, 2]);
    expect(Array.from(sorted)).toEqual([1, 2, 3]);
    // ppoints(3): (1 − 3/8) / (3 + 1/4)
    expect(expected[0]).toBeCloseTo(normal.quantile(0.625 / 3.25), 12);
    expect(expected[1]).toBeCloseTo(0, 12);
    expect(expected[2]).toBeCloseTo(-expected[0], 12);
    const many = normalQuantiles(Array.from({ length: 20 }, (_, i) => i));
    expect(many.expected[0]).toBeCloseTo(normal.quantile(0.5 / 20), 12);
  });

  it('calls normal values straight and others not', () => {
    const { normal: draw, uniform } = random(2);
    expect(normalQuantiles(Array.from({ length: 300 }, draw)).straightness).toBeGreaterThan(0.99);
    expect(normalQuantiles(Array.from({ length: 300 }, () => uniform() ** 6)).straightness).toBeLessThan(0.9);
  });

  it('says nothing of two values', () => {
    expect(normalQuantiles([1, 2]).straightness).toBeNaN();
    expect(normalQuantiles([]).sorted).toHaveLength(0);
  });
});

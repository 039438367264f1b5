import { expect, it } from 'vitest';

interface Distribution {
  cdf(x: number): number;
  upper(x: number): number;
  quantile?(p: number): number;
}

const shares = [1e-12, 1e-4, 0.02, 0.3, 0.5, 0.77, 0.99, 1 - 1e-6];

/** What holds for every distribution: its tails add to one and grow, its quantile is the inverse, NaN stays NaN. */
export function distributionLaws(name: string, d: Distribution, places: readonly number[]): void {
  it(`${name}: the two tails add up to one`, () => {
    for (const x of places) expect(d.cdf(x) + d.upper(x)).toBeCloseTo(1, 14);
  });
  it(`${name}: the share below grows with the place`, () => {
    const below = places.map((x) => d.cdf(x));
    for (let i = 1; i < below.length; i++) expect(below[i]).toBeGreaterThan(below[i - 1]);
  });
  it(`${name}: nothing lies beyond infinity, and NaN stays NaN`, () => {
    expect(d.upper(Infinity)).toBe(0);
    expect(d.cdf(Infinity)).toBe(1);
    expect(d.cdf(-Infinity)).toBe(0);
    expect(d.upper(-Infinity)).toBe(1);
    expect(d.cdf(NaN)).toBeNaN();
    expect(d.upper(NaN)).toBeNaN();
  });
  const { quantile } = d;
  if (!quantile) return;
  it(`${name}: the quantile has the share p below it`, () => {
    for (const p of shares) expect(d.cdf(quantile(p)) / p).toBeCloseTo(1, 11);
  });
  it(`${name}: the quantiles of 0 and 1 are the ends, others outside 0 to 1 are NaN`, () => {
    expect(d.cdf(quantile(0))).toBe(0);
    expect(quantile(1)).toBe(Infinity);
    for (const p of [-0.1, 1.1, NaN]) expect(quantile(p)).toBeNaN();
  });
}

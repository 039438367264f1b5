import { expect, it } from 'vitest';
import { autocorrelation } from '../../lib/stats/autocorrelation.ts';
import { mad } from '../../lib/stats/mad.ts';
import { mean } from '../../lib/stats/mean.ts';
import { median } from '../../lib/stats/median.ts';
import { sd, variance } from '../../lib/stats/sd.ts';
import { sum } from '../../lib/stats/sum.ts';
import { summary } from '../../lib/stats/summary.ts';

it('sum keeps small numbers beside large ones, whichever comes first', () => {
  expect(sum([1e16, 1, -1e16])).toBe(1);
  expect(sum([1, 1e16, -1e16])).toBe(1);
  expect(sum(Array.from({ length: 10 }, () => 0.1))).toBe(1);
  expect(sum([])).toBe(0);
  expect(sum([NaN, 2, NaN])).toBe(2);
});
it('an infinite value makes an infinite sum', () => {
  expect(sum([1, Infinity])).toBe(Infinity);
  expect(sum([-Infinity, 4, 5])).toBe(-Infinity);
});
it('the mean counts only what is there', () => {
  expect(mean([1, NaN, 3])).toBe(2);
  expect(mean([])).toBeNaN();
  expect(mean([NaN])).toBeNaN();
});
it('the standard deviation wants two values', () => {
  expect(sd([4])).toBeNaN();
  expect(sd([])).toBeNaN();
  expect(sd([4, NaN])).toBeNaN();
  expect(sd([4, NaN, 6])).toBe(Math.SQRT2);
  expect(variance([5, 5, 5])).toBe(0);
});
it('a large common part does not spoil the standard deviation', () => {
  expect(sd([1e9 + 1, 1e9 + 2, 1e9 + 3])).toBe(1);
});
it('the median of an even number lies half-way', () => {
  expect(median([4, 1, 3, 2])).toBe(2.5);
  expect(median([])).toBeNaN();
});
it('MAD ignores one wild value and can be had unscaled', () => {
  expect(mad([1, 2, 3, 4, 1000], 1)).toBe(1);
  expect(mad([NaN, 1, 2, 3])).toBeCloseTo(1.4826, 12);
  expect(mad([])).toBeNaN();
});
it('autocorrelation leaves out pairs with either missing', () => {
  expect(autocorrelation([1, 2, 3, 4])).toBe(0.25);
  expect(autocorrelation([1, -1, 1, -1])).toBe(-0.75);
  expect(autocorrelation([1, -1, 1, -1], 2)).toBe(0.5);
  expect(autocorrelation([1, NaN, -1])).toBe(0);
  expect(autocorrelation([3, 3])).toBeNaN();
});
it('a summary says how many it left out', () => {
  expect(summary([4, NaN, 1, 3, 2])).toEqual({
    n: 4,
    missing: 1,
    mean: 2.5,
    sd: Math.sqrt(5 / 3),
    se: Math.sqrt(5 / 3) / 2,
    min: 1,
    lowerQuartile: 1.75,
    median: 2.5,
    upperQuartile: 3.25,
    max: 4,
  });
  const none = summary([NaN]);
  expect([none.n, none.missing]).toEqual([0, 1]);
  expect([none.mean, none.sd, none.se, none.min, none.max]).toEqual([NaN, NaN, NaN, NaN, NaN]);
});

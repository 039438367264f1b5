import { expect, test } from 'vitest';
import { farFromOthers } from '../../lib/hoof/farFromOthers.ts';

test('values far from the others are found, the farthest first, by distances from the median', () => {
  // Median 530, distances 30 20 10 0 10 20 370 300: their median 20, scaled 29.7; 104 away is far.
  const weights = Float64Array.of(500, 510, 520, 530, Number.NaN, 540, 550, 230, 900);
  expect(farFromOthers(weights)).toEqual([8, 7]);
  expect(farFromOthers(weights.map((weight) => -weight))).toEqual([8, 7]);
  expect(farFromOthers(Float64Array.of(500, 510, 520, 530, 900))).toEqual([4]);
});

test('nothing is far among fewer than five, or where half of all are the same', () => {
  expect(farFromOthers(Float64Array.of(1, 2, 3, 900))).toEqual([]);
  expect(farFromOthers(Float64Array.of(1, 2, 3, 900, Number.NaN))).toEqual([]);
  expect(farFromOthers(Float64Array.of(5, 5, 5, 5, 900))).toEqual([]);
  expect(farFromOthers(new Float64Array(0))).toEqual([]);
});

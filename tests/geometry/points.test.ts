import { expect, it } from 'vitest';
import { about, centreOf, presentPairs, presentPoints, toPoints } from '../../lib/geometry/points.ts';

it('flat lists, typed arrays, pairs and objects become points alike', () => {
  const points = [
    [0, 1],
    [2, 3],
  ];
  expect(toPoints([0, 1, 2, 3])).toEqual(points);
  expect(toPoints(Float64Array.of(0, 1, 2, 3))).toEqual(points);
  expect(toPoints(points)).toEqual(points);
  expect(toPoints(points.map(([x, y]) => ({ x, y })))).toEqual(points);
  expect(toPoints([])).toEqual([]);
});
it('a point with a coordinate that is no finite number is missing as a whole', () => {
  expect(toPoints([0, NaN, Infinity, 1, 4, 5])).toEqual([
    [NaN, NaN],
    [NaN, NaN],
    [4, 5],
  ]);
  expect(toPoints([[null as unknown as number, 1], [2]])).toEqual([
    [NaN, NaN],
    [NaN, NaN],
  ]);
  expect(presentPoints([NaN, 1, 2, 3])).toEqual({ points: [[2, 3]], missing: 1 });
});
it('an odd number of coordinates is refused with the way out', () => {
  expect(() => toPoints([1, 2, 3])).toThrow(
    'An even number of coordinates was expected, found 3; give x and y of every point',
  );
});
it('pairs keep only what both sides have', () => {
  const found = presentPairs([0, 0, NaN, 1, 2, 2], [5, 5, 6, 6, 7, NaN]);
  expect(found).toEqual({ a: [[0, 0]], b: [[5, 5]], missing: 2 });
  expect(() => presentPairs([0, 0], [0, 0, 1, 1])).toThrow('As many points on both sides were expected, found 1 and 2');
});
it('the centre of points, and points about it', () => {
  const points = [[0, 0] as const, [2, 4] as const];
  expect(centreOf(points)).toEqual([1, 2]);
  expect(about([1, 2], points)).toEqual([
    [-1, -2],
    [1, 2],
  ]);
  expect(centreOf([])).toEqual([NaN, NaN]);
});

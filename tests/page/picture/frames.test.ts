import fc from 'fast-check';
import { expect, test } from 'vitest';
import { asItLies, seenThrough, sightOf, through } from '../../../lib/page/picture/frames.ts';
import { toRoom } from '../../../lib/page/picture/sight.ts';
import type { FlatMap, Spot } from '../../../lib/page/picture/work.ts';

const value = fc.double({ min: -50, max: 50, noNaN: true });
const map = fc.tuple(value, value, value, value, value, value) as fc.Arbitrary<FlatMap>;
const sight = { scale: 2.5, x: 30, y: -20 };

test('a map seen through a sight is the map, and then the sight', () => {
  fc.assert(
    fc.property(map, value, value, (laid, x, y) => {
      const [u, v] = through(seenThrough(laid, sight), [x, y]);
      const [wantedU, wantedV] = toRoom(sight, through(laid, [x, y]));
      expect(u).toBeCloseTo(wantedU, 6);
      expect(v).toBeCloseTo(wantedV, 6);
    }),
    { seed: 4 },
  );
});

test('a picture as it lies stays where it is', () => {
  expect(through(asItLies, [3, 4])).toEqual([3, 4]);
});

test('all spots are seen in the middle of the room, with room round them', () => {
  const spots: readonly Spot[] = [
    [1000, 2000],
    [1600, 1300],
    [2300, 2010],
  ];
  const room = { width: 700, height: 500 };
  const seen = spots.map((spot) => toRoom(sightOf(spots, room), spot));
  const [xs, ys] = [seen.map(([x]) => x), seen.map(([, y]) => y)];
  expect(Math.min(...xs)).toBeGreaterThan(100);
  expect(Math.max(...xs)).toBeLessThan(600);
  expect(Math.min(...ys)).toBeGreaterThan(80);
  expect(Math.max(...ys)).toBeLessThan(420);
  expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(350, 6);
  expect((Math.min(...ys) + Math.max(...ys)) / 2).toBeCloseTo(250, 6);
});

test('a single spot is seen too', () => {
  const [x, y] = toRoom(sightOf([[5, 6]], { width: 10, height: 10 }), [5, 6]);
  expect([x, y].every(Number.isFinite)).toBe(true);
});

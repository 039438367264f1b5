import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  bringing,
  held,
  moved,
  pinched,
  toPicture,
  toRoom,
  wholeSight,
  zoomed,
} from '../../../lib/page/picture/sight.ts';

const picture = { width: 4000, height: 3000 };
const room = { width: 800, height: 500 };
const near = ([x, y]: readonly [number, number]) => [expect.closeTo(x, 6), expect.closeTo(y, 6)];
const spot = fc.tuple(fc.double({ min: -900, max: 900, noNaN: true }), fc.double({ min: -900, max: 900, noNaN: true }));
const sight = fc.record({
  scale: fc.double({ min: 0.01, max: 20, noNaN: true }),
  x: fc.double({ min: -5000, max: 5000, noNaN: true }),
  y: fc.double({ min: -5000, max: 5000, noNaN: true }),
});

test('the whole picture lies in the middle of its room', () => {
  const whole = wholeSight(picture, room);
  expect(whole.scale).toBeCloseTo(1 / 6, 12);
  expect(toRoom(whole, [2000, 1500])).toEqual(near([400, 250]));
  expect(whole.y).toBeCloseTo(0, 9);
});

test('from the picture to the room and back is where it was', () => {
  fc.assert(
    fc.property(sight, spot, (s, p) => {
      expect(toPicture(s, toRoom(s, p))).toEqual(near(p));
    }),
    { seed: 1 },
  );
});

test('what lies under the pointer stays under it while zooming', () => {
  fc.assert(
    fc.property(sight, spot, fc.double({ min: 0.2, max: 5, noNaN: true }), (s, at, factor) => {
      const held = toPicture(s, at);
      const [x, y] = toRoom(zoomed(s, factor, at), held);
      expect(Math.hypot(x - at[0], y - at[1])).toBeLessThan(1e-6);
    }),
    { seed: 2 },
  );
});

test('two fingers keep the spots they lie on when they only zoom and move', () => {
  const start = { scale: 0.5, x: 10, y: 20 };
  const before = [
    [100, 100],
    [200, 100],
  ] as const;
  const now = [
    [90, 150],
    [290, 150],
  ] as const;
  const after = pinched(start, before, now);
  expect(after.scale).toBe(1);
  for (const finger of [0, 1] as const)
    expect(toRoom(after, toPicture(start, before[finger]))).toEqual(near(now[finger]));
});

test('two fingers in one place move the picture and leave its size', () => {
  const at = [50, 50] as const;
  expect(pinched({ scale: 2, x: 0, y: 0 }, [at, at], [at, [70, 50]]).scale).toBe(2);
});

test('a picture is never wider than whole, and never leaves a gap where it could fill the room', () => {
  expect(held({ scale: 0.001, x: 999, y: -999 }, picture, room)).toEqual(wholeSight(picture, room));
  fc.assert(
    fc.property(sight, (s) => {
      const { scale, x, y } = held(s, picture, room);
      expect(scale).toBeGreaterThanOrEqual(wholeSight(picture, room).scale);
      expect(scale).toBeLessThanOrEqual(12);
      if (picture.width * scale > room.width) {
        expect(x).toBeLessThanOrEqual(0);
        expect(x + picture.width * scale).toBeGreaterThanOrEqual(room.width - 1e-6);
      } else expect(x).toBeCloseTo((room.width - picture.width * scale) / 2, 6);
      if (picture.height * scale > room.height)
        expect(y + picture.height * scale).toBeGreaterThanOrEqual(room.height - 1e-6);
      else expect(y).toBeCloseTo((room.height - picture.height * scale) / 2, 6);
    }),
    { seed: 3 },
  );
});

test('a point out of sight is brought to its edge, one in sight moves nothing', () => {
  const close = { scale: 1, x: 0, y: 0 };
  expect(bringing(close, [400, 250], room)).toEqual(close);
  expect(toRoom(bringing(close, [1000, -40], room, 24), [1000, -40])).toEqual([776, 24]);
});

test('moving is by px of the screen', () => {
  expect(moved({ scale: 3, x: 1, y: 2 }, [4, -5])).toEqual({ scale: 3, x: 5, y: -3 });
});

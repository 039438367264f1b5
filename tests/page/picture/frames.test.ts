import fc from 'fast-check';
import { expect, test } from 'vitest';
import { frameMap, sightOf, through } from '../../../lib/page/picture/frames.ts';
import type { GroundFrame, Spot } from '../../../lib/page/picture/work.ts';

const sight = { scale: 2, x: 300, y: 200 };
const frame = fc.record({
  anchor: fc.tuple(fc.double({ min: 0, max: 4000, noNaN: true }), fc.double({ min: 0, max: 3000, noNaN: true })),
  turned: fc.double({ min: -30, max: 30, noNaN: true }),
  pxPerMm: fc.double({ min: 0.5, max: 20, noNaN: true }),
});

/** Where a place of the foot, in mm from the anchor along the ground and down from it, falls in a picture. */
const seen = ({ anchor: [x, y], turned, pxPerMm }: GroundFrame, [along, down]: Spot): Spot => {
  const [cos, sin] = [Math.cos((turned * Math.PI) / 180), Math.sin((turned * Math.PI) / 180)];
  return [x + pxPerMm * (along * cos - down * sin), y + pxPerMm * (along * sin + down * cos)];
};

test('one place of the foot falls on one place of the room, from whatever picture', () => {
  fc.assert(
    fc.property(frame, frame, (a, b) => {
      const place: Spot = [37, -52];
      const [x, y] = through(frameMap(a, sight), seen(a, place));
      const [u, v] = through(frameMap(b, sight), seen(b, place));
      expect(Math.hypot(x - u, y - v)).toBeLessThan(1e-6);
      expect([x, y]).toEqual([expect.closeTo(300 + 74, 6), expect.closeTo(200 - 104, 6)]);
    }),
    { seed: 4 },
  );
});

test('all points of both pictures are seen, with room round them', () => {
  const a: GroundFrame = { anchor: [1000, 2000], turned: 3, pxPerMm: 9 };
  const b: GroundFrame = { anchor: [1500, 1800], turned: -4, pxPerMm: 6 };
  const places: readonly Spot[] = [
    [0, 0],
    [60, -70],
    [130, 0],
    [140, -90],
  ];
  const layers = [a, b].map((frame) => ({ frame, spots: places.map((place) => seen(frame, place)) }));
  const room = { width: 700, height: 500 };
  const made = sightOf(layers, room);
  for (const { frame, spots } of layers)
    for (const spot of spots) {
      const [x, y] = through(frameMap(frame, made), spot);
      expect(x).toBeGreaterThan(50);
      expect(x).toBeLessThan(650);
      expect(y).toBeGreaterThan(50);
      expect(y).toBeLessThan(450);
    }
});

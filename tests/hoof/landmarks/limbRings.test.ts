import { describe, expect, it } from 'vitest';
import type { Place } from '../../../lib/geometry/pinhole.ts';
import { limbRings, onRing, pasternFront } from '../../../lib/hoof/landmarks/limbRings.ts';
import { plainHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';

function near(found: Place, expected: Place): void {
  found.forEach((value, c) => {
    expect(value).toBeCloseTo(expected[c], 9);
  });
}

describe('cuts across an invented limb', () => {
  it('have 0 degrees in front, 90 to the horse’s left and 180 behind', () => {
    const ring = { centre: [1, 2, 3], front: [0, 0.6, 0.8], width: 10, deep: 20 } as const;
    near(onRing(ring, 0), [1, 14, 19]);
    near(onRing(ring, 90), [11, 2, 3]);
    near(onRing(ring, 180), [1, -10, -13]);
    near(onRing(ring, -90), [-9, 2, 3]);
    near(onRing(ring, 30), [6, 2 + 12 * Math.cos(Math.PI / 6), 3 + 16 * Math.cos(Math.PI / 6)]);
  });

  it('have their fronts on the front line of the pastern, and stand square to it', () => {
    const [lowest, middle, highest] = limbRings(plainHoof);
    for (const [ring, far] of [
      [lowest, 14],
      [middle, 34],
      [highest, 66],
    ] as const) {
      near(onRing(ring, 0), pasternFront(plainHoof, far));
      const along = pasternFront(plainHoof, 1).map((value, c) => value - pasternFront(plainHoof, 0)[c]);
      expect(along.reduce((sum, value, c) => sum + value * ring.front[c], 0)).toBeCloseTo(0, 12);
    }
  });

  it('rise from the hairline to the cannon, which stands upright over the fetlock', () => {
    const rings = limbRings(plainHoof);
    const heights = rings.map(({ centre }) => centre[1]);
    expect(heights).toEqual([...heights].sort((a, b) => a - b));
    const [fetlock, ...cannon] = rings.slice(3);
    for (const { centre } of cannon) {
      expect(centre[0]).toBe(0);
      expect(centre[2] - fetlock.centre[2]).toBeCloseTo(4, 9);
    }
  });
});

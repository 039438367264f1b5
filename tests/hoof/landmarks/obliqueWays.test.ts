import { describe, expect, it } from 'vitest';
import type { Point } from '../../../lib/geometry/points.ts';
import { obliqueWays } from '../../../lib/hoof/landmarks/obliqueWays.ts';
import { type PicturePlane, unscaledPlane } from '../../../lib/hoof/landmarks/picturePlane.ts';
import type { Situation } from '../../../lib/hoof/landmarks/situation.ts';

const cross: readonly Point[] = [
  [-30, 0],
  [30, 0],
  [0, -30],
  [0, 30],
];

function ways(plane: PicturePlane, corners: readonly Point[] = [], distance_mm = 2000) {
  return obliqueWays({ plane, corners, inPlane: cross, distance_mm } as unknown as Situation);
}

const step = Math.sqrt(3) * ((5 * Math.PI) / 180);

describe('where points were if the camera was not square', () => {
  it('is nowhere else where a board has made the picture square', () => {
    expect(ways({ ...unscaledPlane, known: 'shape' })).toEqual([]);
  });

  it('is taken at nine ways whose turns and tilts have a mean of 0 and 5 degrees as their standard deviation', () => {
    const found = ways(unscaledPlane);
    expect(found.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
    // Turned by so much, what seems 30 to the right was 30 / cos.
    const turns = found.map(({ points }) => Math.acos(30 / points[1][0]));
    expect(found.reduce((sum, { weight }, i) => sum + weight * turns[i] ** 2, 0)).toBeCloseTo(
      (step / Math.sqrt(3)) ** 2,
      9,
    );
    expect(Math.max(...turns)).toBeCloseTo(step, 9);
    // Square on is one of them, and what is turned and tilted leans as much to either side.
    expect(found[4]).toEqual({ points: cross, weight: expect.closeTo(4 / 9, 12) });
    const lean = found.map(({ points }) => points[1][1]);
    expect(lean.reduce((sum, value) => sum + value, 0)).toBeCloseTo(0, 9);
    expect(lean[0]).toBeCloseTo(-30 * Math.tan(step) * Math.tan(step), 9);
    expect(lean[2]).toBeCloseTo(30 * Math.tan(step) * Math.tan(step), 9);
  });

  it('is nearer on the one side and further on the other, where the size and so the distance is known', () => {
    const sized: PicturePlane = { ...unscaledPlane, known: 'size' };
    const [turned] = ways(sized).filter((_, i) => i === 1);
    const [left, right] = turned.points;
    const seen = ([x]: Point) => (Math.cos(-step) * x) / ((Math.sin(-step) * x) / 2000 + 1);
    expect(seen(left)).toBeCloseTo(-30, 9);
    expect(seen(right)).toBeCloseTo(30, 9);
    const [tilted] = ways(sized).filter((_, i) => i === 3);
    const upright = ([, y]: Point) => (Math.cos(-step) * y) / ((-Math.sin(-step) * y) / 2000 + 1);
    expect(upright(tilted.points[2])).toBeCloseTo(-30, 9);
    expect(upright(tilted.points[3])).toBeCloseTo(30, 9);
  });

  it('keeps the bar at its length', () => {
    const plane: PicturePlane = { ...unscaledPlane, known: 'nothing' };
    const flat = ways(plane, [
      [-50, 20],
      [50, 20],
    ]);
    // A bar across shrinks with the foot by a turn, so that only what is upright changes: it seems longer by 1 / cos.
    const [, turned] = flat;
    expect(turned.points[1][0]).toBeCloseTo(30, 9);
    expect(turned.points[3][1]).toBeCloseTo(30 * Math.cos(step), 9);
  });
});

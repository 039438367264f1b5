import { describe, expect, it } from 'vitest';
import type { Point } from '../../../lib/geometry/points.ts';
import { transformPoint } from '../../../lib/geometry/transformPoints.ts';
import { otherScales } from '../../../lib/hoof/landmarks/otherScales.ts';
import type { PictureScale } from '../../../lib/hoof/landmarks/pictureMeasures.ts';
import { picturePlane } from '../../../lib/hoof/landmarks/picturePlane.ts';
import type { Situation } from '../../../lib/hoof/landmarks/situation.ts';

const of = (scale: PictureScale | undefined, corners: readonly Point[]) =>
  otherScales({ scale, corners, scalePlacing_px: 2 } as unknown as Situation);

describe('other scales that the picture might as well have', () => {
  it('of a bar are its ends moved either way, and the bar longer and shorter by its error', () => {
    const pairs = of({ kind: 'bar', length_mm: 100, error_mm: 1 }, [
      [0, 0],
      [200, 0],
    ]);
    const sizes = pairs.map((pair) => pair.map(({ toPlane }) => toPlane[0][0]));
    const across = 100 / Math.hypot(200, 2);
    const expected = [
      [100 / 198, 100 / 202],
      [across, across],
      [100 / 202, 100 / 198],
      [across, across],
      [101 / 200, 99 / 200],
    ];
    sizes.flat().forEach((size, i) => {
      expect(size).toBeCloseTo(expected.flat()[i], 12);
    });
  });

  it('of a board are its corners moved, and the board wider, narrower, higher and lower; half a millimetre where not given', () => {
    const corners: readonly Point[] = [
      [0, 200],
      [300, 200],
      [300, 0],
      [0, 0],
    ];
    const pairs = of({ kind: 'board', width_mm: 150, height_mm: 100 }, corners);
    expect(pairs).toHaveLength(4 * 2 + 2);
    const far = pairs.map((pair) => pair.map(({ toPlane }) => transformPoint(toPlane, [300, 0])));
    const near = (found: readonly number[], expected: readonly number[]) =>
      found.forEach((value, c) => {
        expect(value).toBeCloseTo(expected[c], 9);
      });
    near(far[8][0], [150.5, 100]);
    near(far[8][1], [149.5, 100]);
    near(far[9][0], [150, 100.5]);
    near(far[9][1], [150, 99.5]);
    // Each corner in turn is what it was, two pixels away from where it was placed.
    const places = [
      [0, 0],
      [150, 0],
      [150, 100],
      [0, 100],
    ] as const;
    corners.forEach(([x, y], i) => {
      for (const [pair, by] of [
        [pairs[2 * i], [2, 0]],
        [pairs[2 * i + 1], [0, 2]],
      ] as const)
        for (const [way, sign] of [1, -1].entries())
          near(transformPoint(pair[way].toPlane, [x + sign * by[0], y + sign * by[1]]), places[i]);
    });
  });

  it('are none where there is no scale, and leave out what settles nothing', () => {
    expect(of(undefined, [])).toEqual([]);
    // Two pixels to the left one end lies on the other.
    const pairs = of({ kind: 'bar', length_mm: 100 }, [
      [0, 0],
      [2, 0],
    ]);
    expect(pairs).toHaveLength(3);
  });
});

it('a bar whose ends lie on one another is no scale', () => {
  const found = picturePlane({ kind: 'bar', length_mm: 100 }, [
    [7, 8],
    [7, 8],
  ]);
  expect(found).toEqual({
    failure: 'The two ends of the bar lie on one another; place them apart',
    n: 2,
    missing: 0,
  });
});

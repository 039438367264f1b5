import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FitFailure, isFitFailure } from '../../lib/geometry/fitFailure.ts';
import { fitSimilarity, type Similarity } from '../../lib/geometry/fitSimilarity.ts';
import { type GeneralProcrustes, generalProcrustes } from '../../lib/geometry/generalProcrustes.ts';
import { lineAngle } from '../../lib/geometry/lineAngle.ts';
import { type MirrorSymmetry, mirrored, mirrorSymmetry } from '../../lib/geometry/mirrorSymmetry.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { type Procrustes, procrustes } from '../../lib/geometry/procrustes.ts';
import { transformPoints } from '../../lib/geometry/transformPoints.ts';

const shape: Point[] = [
  [0, 0],
  [4, -1],
  [6, 1],
  [7, 4],
  [3, 6],
  [-1, 3],
];
/** Turned in degrees, scaled, moved. */
const changed = (points: readonly Point[], turn: number, scale: number, [x, y]: Point): Point[] => {
  const [cos, sin] = [scale * Math.cos((turn * Math.PI) / 180), scale * Math.sin((turn * Math.PI) / 180)];
  return points.map(([u, v]) => [cos * u - sin * v + x, sin * u + cos * v + y]);
};
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('fitSimilarity', () => {
  it('finds turn, scale and place again', () => {
    fc.assert(
      fc.property(real(-179, 179), real(0.01, 100), real(-50, 50), real(-50, 50), (turn, scale, x, y) => {
        const found = fitSimilarity(shape, changed(shape, turn, scale, [x, y])) as Similarity;
        expect(found.turn).toBeCloseTo(turn, 8);
        expect(found.scale / scale).toBeCloseTo(1, 10);
        expect(found.translation[0]).toBeCloseTo(x, 8);
        expect(found.translation[1]).toBeCloseTo(y, 8);
        expect(found.mirrored).toBe(false);
      }),
    );
  });
  it('keeps the size where asked to', () => {
    const found = fitSimilarity(shape, changed(shape, 30, 5, [1, 2]), { scale: false }) as Similarity;
    expect(found.scale).toBe(1);
    expect(found.turn).toBeCloseTo(30, 10);
  });
  it('takes a mirror image only where allowed and nearer', () => {
    const image = changed(
      shape.map(([x, y]): Point => [x, -y]),
      40,
      2,
      [5, 6],
    );
    const found = fitSimilarity(shape, image, { reflect: true }) as Similarity;
    expect(found).toMatchObject({ mirrored: true, n: 6, missing: 0 });
    expect(found.turn).toBeCloseTo(40, 10);
    transformPoints(found.matrix, shape).forEach(([x, y], i) => {
      expect(x).toBeCloseTo(image[i][0], 10);
      expect(y).toBeCloseTo(image[i][1], 10);
    });
    expect((fitSimilarity(shape, image) as Similarity).mirrored).toBe(false);
    expect((fitSimilarity(shape, changed(shape, 10, 1, [0, 0]), { reflect: true }) as Similarity).mirrored).toBe(false);
  });
  it('two points are enough: a bar of known length', () => {
    const found = fitSimilarity([100, 200, 400, 600], [0, 0, 50, 0]) as Similarity;
    expect(found.scale).toBeCloseTo(0.1, 12);
    expect(found.turn).toBeCloseTo(-53.13010235415598, 10);
  });
  it('says why where there is nothing to match', () => {
    expect((fitSimilarity([0, 0, NaN, 1], [0, 0, 1, 1]) as FitFailure).failure).toMatch(/^Found 1 points/);
    expect((fitSimilarity([1, 1, 1, 1], [0, 0, 1, 1]) as FitFailure).failure).toMatch(/^The points have no extent/);
    expect(isFitFailure(fitSimilarity([0, 0, 1, 1], [2, 2, 2, 2]))).toBe(true);
  });
});

describe('procrustes', () => {
  it('leaves nothing between a shape and its changed self', () => {
    const found = procrustes(shape, changed(shape, -70, 3, [9, 9])) as Procrustes;
    expect(found.sumOfSquares).toBeCloseTo(0, 20);
    expect(found.disparity).toBeCloseTo(0, 20);
    expect(found.scale).toBeCloseTo(1 / 3, 12);
    found.moved.forEach(([x, y], i) => {
      expect(x).toBeCloseTo(shape[i][0], 10);
      expect(y).toBeCloseTo(shape[i][1], 10);
    });
  });
  it('the distance between shapes is the same both ways and without size', () => {
    const other = shape.map(([x, y], i): Point => [x + (i === 2 ? 1 : 0), y * 1.1]);
    const [there, back] = [procrustes(shape, other) as Procrustes, procrustes(other, shape) as Procrustes];
    expect(back.distance).toBeCloseTo(there.distance, 12);
    const kept = procrustes(shape, other, { scale: false }) as Procrustes;
    expect(kept.distance).toBeCloseTo(there.distance, 12);
    expect(kept.sumOfSquares).toBeGreaterThan(there.sumOfSquares);
    expect(there.rmsd).toBeCloseTo(Math.sqrt(there.sumOfSquares / 6), 14);
  });
  it('moves every point it is given, also those without a partner', () => {
    const target = [...shape.slice(0, 5), [NaN, NaN] as const];
    const moving: Point[] = [[NaN, 0], ...changed(shape, 90, 1, [0, 0]).slice(1)];
    const found = procrustes(target, moving) as Procrustes;
    expect([found.n, found.missing]).toEqual([4, 2]);
    expect(found.moved[0]).toEqual([NaN, NaN]);
    expect(found.moved[5][0]).toBeCloseTo(shape[5][0], 10);
    expect(found.rotation[0][0]).toBeCloseTo(0, 10);
    expect(found.rotation[0][1]).toBeCloseTo(-1, 10);
  });
  it('hands on why it failed', () => {
    expect(isFitFailure(procrustes([0, 0], [1, 1]))).toBe(true);
  });
});

describe('generalProcrustes', () => {
  const bent = shape.map(([x, y], i): Point => [x + (i === 3 ? 0.6 : 0), y]);
  it('the mean of two shapes lies half-way between them', () => {
    const found = generalProcrustes([shape, changed(bent, 50, 4, [3, 3])]) as GeneralProcrustes;
    const { distance } = procrustes(shape, bent) as Procrustes;
    expect(found.distances[0]).toBeCloseTo(distance / 2, 9);
    expect(found.distances[1]).toBeCloseTo(distance / 2, 9);
    expect(found.rms).toBeCloseTo(distance / 2, 9);
  });
  it('is turned like the first shape and of mean size', () => {
    const found = generalProcrustes([shape, changed(shape, 50, 3, [0, 0])]) as GeneralProcrustes;
    const fit = procrustes(found.mean, shape) as Procrustes;
    expect(fit.turn).toBeCloseTo(0, 8);
    expect(fit.scale).toBeCloseTo(2, 8);
    expect(found.centroidSizes[1] / found.centroidSizes[0]).toBeCloseTo(3, 12);
  });
  it('leaves out a landmark that any shape lacks', () => {
    const found = generalProcrustes([shape, [...bent.slice(0, 5), [NaN, 1]]]) as GeneralProcrustes;
    expect([found.n, found.missing]).toEqual([5, 1]);
    expect(found.mean[5]).toEqual([NaN, NaN]);
    expect(found.mean[0][0]).not.toBeNaN();
  });
  it('says why not, and refuses shapes of different length', () => {
    expect((generalProcrustes([]) as FitFailure).failure).toMatch(/^Found 0 points/);
    expect((generalProcrustes([shape, shape.map((): Point => [1, 1])]) as FitFailure).failure).toMatch(
      /^A shape has all its landmarks in one place/,
    );
    expect(() => generalProcrustes([shape, [0, 0]])).toThrow('Shapes of 6 landmarks were expected, found one of 1');
  });
});

describe('mirrorSymmetry', () => {
  const kite: Point[] = [
    [0, 5],
    [-2, 1],
    [2, 1],
    [0, -3],
  ];
  const partners = [0, 2, 1, 3];
  it('finds a symmetric shape symmetric at any turn, and its axis', () => {
    for (const turn of [0, 25, 90, 130]) {
      const found = mirrorSymmetry(changed(kite, turn, 2, [7, -4]), partners) as MirrorSymmetry;
      expect(found.asymmetry).toBeCloseTo(0, 20);
      expect(found.rmsd).toBeCloseTo(0, 10);
      expect(Math.sin(((lineAngle(found.axis) - 90 - turn) * Math.PI) / 180)).toBeCloseTo(0, 10);
      const [x, y] = changed([[0, 1]], turn, 2, [7, -4])[0];
      expect(found.axis.point[0]).toBeCloseTo(x, 10);
      expect(found.axis.point[1]).toBeCloseTo(y, 10);
    }
  });
  it('one side pushed out by 2 is 1 away from the mean of both sides', () => {
    const pushed: Point[] = [...Array.from({ length: 200 }, (_, i): Point => [0, i - 100]), [-10, 0], [12, 0]];
    const pairs = [...Array.from({ length: 200 }, (_, i) => i), 201, 200];
    const found = mirrorSymmetry(pushed, pairs) as MirrorSymmetry;
    expect(found.symmetric[200][0]).toBeCloseTo(-11, 1);
    expect(found.symmetric[201][0]).toBeCloseTo(11, 1);
    expect(found.rmsd).toBeCloseTo(Math.sqrt(2 / 202), 2);
    expect(found.asymmetry).toBeGreaterThan(0);
  });
  it('the asymmetry is a share: a right angle with legs of 1 and 3', () => {
    const found = mirrorSymmetry([0, 0, 1, 0, 0, 3], [0, 2, 1]) as MirrorSymmetry;
    // About their centre the points span 10 − 10/3 in all; mirrored and turned at best, c, they share 2c.
    const extent = 10 - 10 / 3;
    const mirrorX = [-1 / 3, 2 / 3, -1 / 3];
    const mirrorY = [-1, -1, 2];
    const swap = [0, 2, 1];
    let [along, across] = [0, 0];
    swap.forEach((partner, i) => {
      along += mirrorX[partner] * mirrorX[i] - mirrorY[partner] * mirrorY[i];
      across += mirrorX[partner] * mirrorY[i] + mirrorY[partner] * mirrorX[i];
    });
    const expected = (2 * extent - 2 * Math.hypot(along, across)) / 4 / extent;
    expect(found.asymmetry).toBeCloseTo(expected, 12);
    expect(found.rmsd).toBeCloseTo(Math.sqrt((expected * extent) / 3), 12);
  });
  it('leaves out landmarks whose partner is missing', () => {
    const found = mirrorSymmetry([...kite, [-3, 0], [NaN, 0]], [...partners, 5, 4]) as MirrorSymmetry;
    expect([found.n, found.missing]).toEqual([4, 2]);
    expect(found.asymmetry).toBeCloseTo(0, 20);
    expect(found.symmetric[4]).toEqual([NaN, NaN]);
  });
  it('refuses partners that don’t lead back', () => {
    expect(() => mirrorSymmetry(kite, [0, 2, 3, 1])).toThrow(
      'Partners that lead back to each other were expected; 1 leads to 2',
    );
    expect(isFitFailure(mirrorSymmetry([1, 1], [0]))).toBe(true);
  });
  it('mirrored turns left into right', () => {
    expect(mirrored([1, 2, -3, 4])).toEqual([
      [-1, 2],
      [3, 4],
    ]);
  });
});

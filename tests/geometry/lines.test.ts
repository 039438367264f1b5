import { describe, expect, it } from 'vitest';
import { halfTurn } from '../../lib/geometry/degrees.ts';
import { distancePointLine, nearestOnLine } from '../../lib/geometry/distancePointLine.ts';
import { type FitFailure, isFitFailure } from '../../lib/geometry/fitFailure.ts';
import { intersection } from '../../lib/geometry/intersection.ts';
import { lineThrough } from '../../lib/geometry/line.ts';
import { lineAngle, lineAngleTo } from '../../lib/geometry/lineAngle.ts';
import { type FittedLine, lineByTotalLeastSquares } from '../../lib/geometry/lineByTotalLeastSquares.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { angleAt, signedAngle } from '../../lib/geometry/signedAngle.ts';
import { random } from '../../lib/stats/random.ts';
import { sd } from '../../lib/stats/sd.ts';

describe('signedAngle', () => {
  it('is positive counter-clockwise and turns its sign with the order', () => {
    expect(signedAngle([1, 0], [0, 3])).toBe(90);
    expect(signedAngle([0, 3], [1, 0])).toBe(-90);
    expect(signedAngle([1, 0], [1, -1])).toBeCloseTo(-45, 12);
    expect(signedAngle([0, 2], [0, 5])).toBe(0);
  });
  it('of opposite directions is 180, never −180', () => {
    expect(signedAngle([1, 0], [-2, 0])).toBe(180);
    expect(signedAngle([-1, 0], [2, -0])).toBe(180);
    expect(signedAngle([1, -0], [-1, -0])).toBe(180);
  });
  it('wants two directions', () => {
    expect(signedAngle([0, 0], [1, 0])).toBeNaN();
    expect(signedAngle([1, NaN], [1, 0])).toBeNaN();
  });
});

describe('angleAt, on triangles of the handbooks', () => {
  it('3, 4, 5', () => {
    const [a, b, c]: Point[] = [
      [0, 0],
      [4, 0],
      [4, 3],
    ];
    expect(angleAt(a, b, c)).toBe(90);
    expect(angleAt(b, a, c)).toBeCloseTo(36.86989764584402, 12);
    expect(angleAt(a, c, b)).toBeCloseTo(53.13010235415598, 12);
  });
  it('13, 14, 15: angles 53.13, 59.49 and 67.38 degrees', () => {
    const [a, b, c]: Point[] = [
      [0, 0],
      [14, 0],
      [5, 12],
    ];
    expect(angleAt(b, a, c)).toBeCloseTo(67.38, 2);
    expect(angleAt(a, b, c)).toBeCloseTo(53.13, 2);
    expect(angleAt(a, c, b)).toBeCloseTo(59.49, 2);
  });
  it('equilateral, and right with 30 and 60 degrees', () => {
    const top: Point = [1, Math.sqrt(3)];
    expect(angleAt([0, 0], top, [2, 0])).toBeCloseTo(60, 12);
    expect(angleAt([0, 0], top, [1, 0])).toBeCloseTo(30, 12);
  });
  it('is missing on the corner itself', () => {
    expect(angleAt([1, 1], [1, 1], [2, 2])).toBeNaN();
  });
});

describe('lines', () => {
  const rising = lineThrough([0, 0], [3, 3]);
  it('lie the same whichever way they are directed', () => {
    expect(lineAngle(rising)).toBeCloseTo(45, 12);
    expect(lineAngle(lineThrough([3, 3], [0, 0]))).toBeCloseTo(45, 12);
    expect(lineAngle(lineThrough([0, 0], [-1, 0]))).toBe(0);
    expect(lineAngle(lineThrough([0, 0], [-1, -1e-30]))).toBe(0);
    expect(lineAngle(lineThrough([0, 5], [0, 1]))).toBe(90);
    expect(lineAngle(lineThrough([0, 0], [-1, 1]))).toBeCloseTo(135, 12);
  });
  it('against each other count counter-clockwise from the base', () => {
    const flat = lineThrough([0, 0], [1, 0]);
    expect(lineAngleTo(rising, flat)).toBeCloseTo(45, 12);
    expect(lineAngleTo(flat, rising)).toBeCloseTo(135, 12);
    expect(lineAngleTo(rising, rising)).toBe(0);
  });
  it('through one point twice have no direction', () => {
    const none = lineThrough([1, 1], [1, 1]);
    expect(lineAngle(none)).toBeNaN();
    expect(intersection(none, rising)).toEqual([NaN, NaN]);
    expect(distancePointLine([0, 0], none)).toBeNaN();
  });
  it('cross where both go, however they are directed', () => {
    const [x, y] = intersection(rising, lineThrough([0, 2], [2, 0]));
    expect([x, y]).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12)]);
    expect(intersection(lineThrough([2, 5], [2, -1]), lineThrough([9, 3], [8, 3]))).toEqual([2, 3]);
    expect(intersection(rising, lineThrough([1, 0], [2, 1]))).toEqual([NaN, NaN]);
    expect(intersection(rising, lineThrough([1, 0], [0, -1]))).toEqual([NaN, NaN]);
  });
  it('a point to the left of the direction lies at a positive distance', () => {
    const up = lineThrough([1, 0], [1, 9]);
    expect(distancePointLine([-2, 4], up)).toBe(3);
    expect(distancePointLine([4, 4], up)).toBe(-3);
    expect(nearestOnLine([-2, 4], up)).toEqual([1, 4]);
    expect(nearestOnLine([2, 0], rising)).toEqual([expect.closeTo(1, 12), expect.closeTo(1, 12)]);
  });
  it('that lie anywhere: to 3, 4 from 1, 2', () => {
    const line = lineThrough([1, 2], [4, 6]);
    // The left normal is (−4, 3) / 5.
    expect(distancePointLine([5, 5], line)).toBeCloseTo((-4 * 4 + 3 * 3) / 5, 12);
    expect(nearestOnLine([5, 5], line)).toEqual([expect.closeTo(3.88, 12), expect.closeTo(5.84, 12)]);
    // y = x / 2 + 1 and y = 4x / 3 + 2 / 3.
    const [x, y] = intersection(line, lineThrough([2, 2], [6, 4]));
    expect(x).toBeCloseTo(0.4, 12);
    expect(y).toBeCloseTo(1.2, 12);
  });
  it('halfTurn brings angles into 0 to 180', () => {
    expect([-30, 0, 180, 190, 359, -180, 90].map(halfTurn)).toEqual([150, 0, 0, 10, 179, 0, 90]);
    expect(halfTurn(-1e-20)).toBe(0);
  });
});

describe('lineByTotalLeastSquares', () => {
  it('does not mind how the points are turned, unlike regression', () => {
    const points = [0, 0.1, 1, -0.1, 2, 0.05, 3, 0, 4, -0.1];
    const flat = lineByTotalLeastSquares(points) as FittedLine;
    for (const turn of [30, 89, 90, 91, 150]) {
      const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
      const turned = Array.from({ length: 5 }, (_, i): Point => {
        const [x, y] = [points[2 * i], points[2 * i + 1]];
        return [cos * x - sin * y + 7, sin * x + cos * y - 3];
      });
      const found = lineByTotalLeastSquares(turned) as FittedLine;
      expect(found.angle).toBeCloseTo(halfTurn(flat.angle + turn), 10);
      expect(found.residualSd).toBeCloseTo(flat.residualSd, 12);
      expect(found.angleSe).toBeCloseTo(flat.angleSe, 12);
      expect(Math.hypot(...found.direction)).toBeCloseTo(1, 14);
    }
  });
  it('through two points goes through both and knows no error', () => {
    const found = lineByTotalLeastSquares([1, 1, NaN, 2, 1, 5]) as FittedLine;
    expect(found).toMatchObject({ angle: 90, n: 2, missing: 1, point: [1, 3], residualSd: NaN, angleSe: NaN });
  });
  it('its stated error is the scatter of the angle over many shaken copies', () => {
    const { normal } = random(21);
    const shaken = () => Array.from({ length: 8 }, (_, i): Point => [10 * i + 0.5 * normal(), 6 * i + 0.5 * normal()]);
    const fits = Array.from({ length: 2000 }, () => lineByTotalLeastSquares(shaken()) as FittedLine);
    const scatter = sd(fits.map(({ angle }) => angle));
    const stated = Math.sqrt(fits.reduce((sum, { angleSe }) => sum + angleSe ** 2, 0) / fits.length);
    expect(stated / scatter).toBeGreaterThan(0.95);
    expect(stated / scatter).toBeLessThan(1.05);
    const noise = Math.sqrt(fits.reduce((sum, { residualSd }) => sum + residualSd ** 2, 0) / fits.length);
    expect(noise).toBeCloseTo(0.5, 1);
  });
  it('of one point, or of points that lie alike all round, says why not', () => {
    const few = lineByTotalLeastSquares([1, 1, NaN, 0]) as FitFailure;
    expect(isFitFailure(few)).toBe(true);
    expect(few).toEqual({ failure: 'Found 1 points where at least 2 are needed; place more points', n: 1, missing: 1 });
    const square = lineByTotalLeastSquares([0, 0, 1, 0, 1, 1, 0, 1]) as FitFailure;
    expect(square.failure).toMatch(/^The points lie alike in all directions/);
    expect(isFitFailure(lineByTotalLeastSquares([2, 2, 2, 2]))).toBe(true);
    expect(isFitFailure(lineByTotalLeastSquares([0, 0, 1, 1]))).toBe(false);
  });
});

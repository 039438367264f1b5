import { describe, expect, it } from 'vitest';
import type { Point } from '../../lib/geometry/points.ts';
import { polygonArea } from '../../lib/geometry/polygonArea.ts';
import { resamplePath } from '../../lib/geometry/resamplePath.ts';
import { smoothPath } from '../../lib/geometry/smoothPath.ts';

const halfRing = (count: number): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const t = (Math.PI * i) / (count - 1);
    return [Math.cos(t), Math.sin(t)];
  });

describe('smoothPath', () => {
  it('goes through every point that it was given, in order', () => {
    const given: Point[] = [
      [0, 0],
      [2, 5],
      [3, 1],
      [9, 2],
    ];
    const smooth = smoothPath(given, 5);
    expect(smooth).toHaveLength(16);
    given.forEach(([x, y], i) => {
      expect(smooth[5 * i][0]).toBeCloseTo(x, 12);
      expect(smooth[5 * i][1]).toBeCloseTo(y, 12);
    });
  });
  it('keeps evenly placed points of a parabola near to it, also before the first and behind the last point', () => {
    const given = [0, 1, 2, 3, 4].map((x): Point => [10 * x, x * x]);
    for (const [x, y] of smoothPath(given, 8)) expect(Math.abs(y - (x / 10) ** 2)).toBeLessThan(0.02);
  });
  it('gives twelve points round half a circle its area to a thousandth, where the chords lose more than a hundredth', () => {
    expect(polygonArea(halfRing(12)) / (Math.PI / 2)).toBeLessThan(0.99);
    expect(Math.abs(polygonArea(smoothPath(halfRing(12), 8)) / (Math.PI / 2) - 1)).toBeLessThan(1e-3);
  });
  it('leaves out missing points and repeated ones, and gives back what is too short to bend', () => {
    expect(smoothPath([0, 0, NaN, 1, 1, 0, 1, 0], 4)).toEqual([
      [0, 0],
      [1, 0],
    ]);
    expect(smoothPath([], 4)).toEqual([]);
  });
});

describe('resamplePath', () => {
  it('keeps both ends and cuts the way between into equal steps', () => {
    const cut = resamplePath(halfRing(500), 7);
    expect(cut[0]).toEqual([1, 0]);
    expect(cut[6][0]).toBeCloseTo(-1, 12);
    const steps = cut.slice(1).map(([x, y], i) => Math.hypot(x - cut[i][0], y - cut[i][1]));
    for (const step of steps) expect(step).toBeCloseTo(2 * Math.sin(Math.PI / 12), 4);
  });
  it('of one point is that point, of none is none', () => {
    expect(resamplePath([3, 4], 2)).toEqual([
      [3, 4],
      [3, 4],
    ]);
    expect(resamplePath([], 3)).toEqual([]);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { convexHull } from '../../lib/geometry/convexHull.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { polygonArea, signedArea } from '../../lib/geometry/polygonArea.ts';
import { polygonCentroid } from '../../lib/geometry/polygonCentroid.ts';
import { polygonPerimeter } from '../../lib/geometry/polygonPerimeter.ts';
import { resampleOutline } from '../../lib/geometry/resampleOutline.ts';
import { roundness } from '../../lib/geometry/roundness.ts';
import { secondMoments } from '../../lib/geometry/secondMoments.ts';
import { widestWidth } from '../../lib/geometry/widestWidth.ts';

const ring = (count: number, a: number, b = a): Point[] =>
  Array.from({ length: count }, (_, i) => {
    const t = (2 * Math.PI * i) / count;
    return [a * Math.cos(t), b * Math.sin(t)];
  });
const grid = fc.array(fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })), { maxLength: 20 });

describe('areas and moments', () => {
  it('of a fine ellipse come near the closed forms', () => {
    const ellipse = ring(2000, 5, 3);
    expect(polygonArea(ellipse)).toBeCloseTo(Math.PI * 15, 3);
    const { xx, yy, xy } = secondMoments(ellipse);
    expect(xx / ((Math.PI * 125 * 3) / 4)).toBeCloseTo(1, 4);
    expect(yy / ((Math.PI * 27 * 5) / 4)).toBeCloseTo(1, 4);
    expect(xy).toBeCloseTo(0, 9);
  });
  it('of handbook triangles: 13, 14, 15 has 84; 3, 4, 5 has 6; the centroid is the mean of the corners', () => {
    expect(polygonArea([0, 0, 14, 0, 5, 12])).toBe(84);
    expect(polygonArea([0, 0, 4, 0, 4, 3])).toBe(6);
    expect(polygonPerimeter([0, 0, 14, 0, 5, 12])).toBe(42);
    expect(polygonCentroid([0, 0, 3, 0, 0, 6])).toEqual([1, 2]);
  });
  it('are the same from any corner on and either way round, the sign apart', () => {
    const outline = [0, 0, 6, 0, 6, 5, 4, 5, 4, 2, 2, 2, 2, 5, 0, 5];
    const later = [...outline.slice(6), ...outline.slice(0, 6)];
    expect(signedArea(later)).toBe(24);
    expect(signedArea([0, 0, 0, 1, 1, 1, 1, 0])).toBe(-1);
    expect(polygonArea([0, 0, 0, 1, 1, 1, 1, 0])).toBe(1);
    expect(polygonCentroid(later)).toEqual([3, 2.25]);
    expect(secondMoments(later).xx).toBeCloseTo(secondMoments(outline).xx, 10);
  });
  it('a missing corner is left out; nothing has no area', () => {
    expect(polygonArea([0, 0, NaN, 7, 2, 0, 2, 2, 0, 2])).toBe(4);
    expect(polygonPerimeter([0, 0, 3, 0, 3, NaN, 0, 4])).toBe(12);
    expect([polygonArea([]), polygonPerimeter([]), roundness([])]).toEqual([NaN, NaN, NaN]);
    expect(polygonArea([1, 1, 2, 2])).toBe(0);
    expect(polygonCentroid([1, 1, 2, 2])).toEqual([NaN, NaN]);
    expect(secondMoments([])).toEqual({ xx: NaN, yy: NaN, xy: NaN });
    expect(polygonCentroid([])).toEqual([NaN, NaN]);
  });
  it('roundness is 1 for a circle and falls as the outline flattens', () => {
    expect(roundness(ring(2000, 7))).toBeCloseTo(1, 4);
    expect(roundness(ring(2000, 7, 5))).toBeLessThan(roundness(ring(2000, 7, 6)));
    expect(roundness([0, 0, 5, 0])).toBe(0);
  });
});

describe('convexHull', () => {
  it('holds every point, turns left all the way, and is its own hull', () => {
    fc.assert(
      fc.property(grid, (points) => {
        const hull = convexHull(points);
        expect(convexHull(hull)).toEqual(hull);
        hull.forEach(([x0, y0], i) => {
          const [x1, y1] = hull[(i + 1) % hull.length];
          for (const [x, y] of points) expect((x1 - x0) * (y - y0) - (y1 - y0) * (x - x0)).toBeGreaterThanOrEqual(0);
        });
      }),
    );
  });
  it('drops points on an edge and repeated ones', () => {
    expect(convexHull([0, 0, 1, 0, 2, 0, 2, 2, 0, 2, 0, 0, NaN, 1])).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
      [0, 2],
    ]);
    expect(convexHull([3, 3, 3, 3])).toEqual([[3, 3]]);
    expect(convexHull([0, 0, 1, 1, 2, 2])).toEqual([
      [0, 0],
      [2, 2],
    ]);
    expect(convexHull([])).toEqual([]);
  });
});

describe('widestWidth', () => {
  it('is taken across the axis, with the points it is taken between', () => {
    const shape = [-3, 0, 0, 5, 4, 1, 0, -2];
    expect(widestWidth(shape)).toEqual({ width: 7, left: [-3, 0], right: [4, 1] });
    const along = widestWidth(shape, 0);
    expect(along.width).toBeCloseTo(7, 12);
    expect([along.left, along.right]).toEqual([
      [0, 5],
      [0, -2],
    ]);
    expect(widestWidth(ring(400, 5, 3), 45).width).toBeCloseTo(2 * Math.sqrt((25 + 9) / 2), 3);
  });
  it('of one point is nothing, of none missing', () => {
    expect(widestWidth([2, 3]).width).toBe(0);
    expect(widestWidth([NaN, 3])).toEqual({ width: NaN, left: [NaN, NaN], right: [NaN, NaN] });
  });
});

describe('resampleOutline', () => {
  it('steps evenly along the edges from the first corner', () => {
    const found = resampleOutline([0, 0, 2, 0, 2, 2, 0, 2], 8);
    expect(found).toEqual([
      [0, 0],
      [1, 0],
      [2, 0],
      [2, 1],
      [2, 2],
      [1, 2],
      [0, 2],
      [0, 1],
    ]);
  });
  it('keeps the area of a fine outline, passes over repeated corners, and makes points of one', () => {
    expect(polygonArea(resampleOutline(ring(300, 5, 3), 200))).toBeCloseTo(15 * Math.PI, 1);
    expect(resampleOutline([0, 0, 0, 0, 4, 0], 4)).toEqual([
      [0, 0],
      [2, 0],
      [4, 0],
      [2, 0],
    ]);
    expect(resampleOutline([1, 1], 3)).toEqual([
      [1, 1],
      [1, 1],
      [1, 1],
    ]);
    expect(resampleOutline([], 3)).toEqual([]);
  });
});

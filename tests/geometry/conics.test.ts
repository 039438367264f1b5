import { describe, expect, it } from 'vitest';
import { type Ellipse, ellipseOf as ellipse } from '../../lib/geometry/ellipse.ts';
import { type Circle, fitCircle, fitCircleAlgebraic } from '../../lib/geometry/fitCircle.ts';
import { fitEllipse } from '../../lib/geometry/fitEllipse.ts';
import { fitEllipseGeometric } from '../../lib/geometry/fitEllipseGeometric.ts';
import { type FitFailure, isFitFailure } from '../../lib/geometry/fitFailure.ts';
import { nearestOnEllipse } from '../../lib/geometry/nearestOnEllipse.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { random } from '../../lib/stats/random.ts';

/** Points of an ellipse, at parameters from `from` to `to` in radians. */
function arc(a: number, b: number, turn: number, [x, y]: Point, count: number, from = 0, to = 2 * Math.PI): Point[] {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  return Array.from({ length: count }, (_, i) => {
    const t = from + ((to - from) * i) / count;
    const [u, v] = [a * Math.cos(t), b * Math.sin(t)];
    return [x + cos * u - sin * v, y + sin * u + cos * v];
  });
}

describe.each([
  ['fitEllipse', fitEllipse],
  ['fitEllipseGeometric', fitEllipseGeometric],
])('%s', (_, ellipseOf) => {
  it('finds an ellipse again, at any turn, size and place', () => {
    for (const turn of [0, 17, 45, 90, 133, 179])
      for (const size of [1e-6, 1, 1e5]) {
        const found = ellipseOf(arc(5 * size, 3 * size, turn, [40 * size, -70 * size], 9)) as Ellipse;
        expect(found.semiMajor / size).toBeCloseTo(5, 8);
        expect(found.semiMinor / size).toBeCloseTo(3, 8);
        expect(found.x / size).toBeCloseTo(40, 8);
        expect(found.y / size).toBeCloseTo(-70, 8);
        expect(found.centre).toEqual([found.x, found.y]);
        expect(Math.sin(((found.turn - turn) * Math.PI) / 180)).toBeCloseTo(0, 8);
        expect(found.turn).toBeGreaterThanOrEqual(0);
        expect(found.turn).toBeLessThan(180);
        expect(found.residualSd / size).toBeCloseTo(0, 8);
      }
  });
  it('finds it again from a part of the outline', () => {
    for (const turn of [0, 20, 70, 110, 165])
      for (const [from, to] of [
        [0.3, 3.5],
        [2, 4.5],
        [4, 8],
      ]) {
        const found = ellipseOf(arc(5, 3, turn, [40, -70], 11, from, to)) as Ellipse;
        for (const [name, value] of Object.entries({ x: 40, y: -70, semiMajor: 5, semiMinor: 3 }))
          expect(found[name as 'x'], `${name}, turned by ${turn}`).toBeCloseTo(value, 5);
        expect(Math.sin(((found.turn - turn) * Math.PI) / 180)).toBeCloseTo(0, 5);
      }
  });
  it('five points are enough, and say nothing of their scatter', () => {
    const found = ellipseOf([5, 0, 0, 3, -5, 0, 0, -3, NaN, 1, 3, 2.4]) as Ellipse;
    expect(found).toMatchObject({ n: 5, missing: 1, residualSd: NaN });
    expect(found.semiMajor).toBeCloseTo(5, 10);
    expect(found.semiMinor).toBeCloseTo(3, 10);
  });
  it('a circle is an ellipse with equal axes', () => {
    const found = ellipseOf(arc(4, 4, 0, [1, 2], 12)) as Ellipse;
    expect(found.semiMajor).toBeCloseTo(4, 8);
    expect(found.semiMinor).toBeCloseTo(4, 8);
  });
  it('says why where points settle no ellipse', () => {
    expect((ellipseOf([0, 0, 1, 1, 2, 0, 1, 5]) as FitFailure).failure).toBe(
      'Found 4 points where at least 5 are needed; place more points',
    );
    const line = Array.from({ length: 7 }, (_, i): Point => [i, 2 * i + 1]);
    const nowhere = [
      [3, 3],
      [3, 3],
      [3, 3],
      [3, 3],
      [3, 3],
    ];
    const four = [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
      [0, 0],
      [4, 3],
    ];
    for (const points of [line, nowhere, four]) {
      const found = ellipseOf(points);
      expect(isFitFailure(found)).toBe(true);
      expect((found as FitFailure).failure).toMatch(/^The points settle no ellipse/);
      expect((found as FitFailure).n).toBe(points.length);
    }
  });
  it('its residual deviation is the noise that was put in', () => {
    const { normal } = random(5);
    const points = arc(50, 40, 20, [0, 0], 400).map(([x, y]): Point => [x + 0.3 * normal(), y + 0.3 * normal()]);
    expect((ellipseOf(points) as Ellipse).residualSd).toBeCloseTo(0.3, 1);
  });
});

it('whichever axis is called a, the longer one is the major and its turn is told', () => {
  const axes = { x: 1, y: 2, a: 3, b: 5, turn: Math.PI / 6 };
  expect(ellipse(axes, [], 0)).toMatchObject({ semiMajor: 5, semiMinor: 3, centre: [1, 2], n: 0 });
  expect(ellipse(axes, [], 0).turn).toBeCloseTo(120, 12);
  expect(ellipse({ ...axes, a: 5, b: 3 }, [], 0).turn).toBeCloseTo(30, 12);
});

it('on a noisy arc the geometric fit lies nearer to the points', () => {
  const { normal } = random(14);
  const points = arc(60, 40, 30, [5, 5], 30, 0, Math.PI).map(([x, y]): Point => [x + normal(), y + normal()]);
  const [direct, geometric] = [fitEllipse(points) as Ellipse, fitEllipseGeometric(points) as Ellipse];
  expect(geometric.residualSd).toBeLessThan(direct.residualSd);
  expect(Math.abs(geometric.semiMajor - 60)).toBeLessThan(Math.abs(direct.semiMajor - 60));
});

it('from the geometric fit no small change of an axis, the place or the turn leads nearer to the points', () => {
  const { normal } = random(21);
  const noisy = (points: readonly Point[], noise: number) =>
    points.map(([x, y]): Point => [x + noise * normal(), y + noise * normal()]);
  for (const points of [
    noisy(arc(60, 40, 30, [5, -5], 40), 1),
    noisy(arc(60, 25, 140, [-300, 80], 30, 0.4, 3.6), 0.8),
    noisy(arc(3, 2.5, 75, [0, 0], 12, 1, 5.5), 0.1),
    noisy(arc(800, 500, 100, [2000, 900], 25), 30),
  ]) {
    const { x, y, semiMajor: a, semiMinor: b, turn } = fitEllipseGeometric(points) as Ellipse;
    const axes = { x, y, a, b, turn: (turn * Math.PI) / 180 };
    const least = ellipse(axes, points, 0).residualSd;
    for (const name of ['x', 'y', 'a', 'b', 'turn'] as const)
      for (const step of [1e-4, -1e-4]) {
        const moved = { ...axes, [name]: axes[name] + step * (name === 'turn' ? 1 : a) };
        expect(ellipse(moved, points, 0).residualSd, `${name} by ${step}`).toBeGreaterThan(least);
      }
  }
});

describe('nearestOnEllipse', () => {
  it('lies on the ellipse and its normal goes through the point', () => {
    for (const [a, b] of [
      [5, 3],
      [3, 5],
      [4, 4],
    ])
      for (const [px, py] of [
        [9, 7],
        [-1, 0.5],
        [0.2, -6],
        [-8, -0.1],
        [0.01, 0.01],
      ]) {
        const [x, y] = nearestOnEllipse([px, py], a, b);
        expect((x / a) ** 2 + (y / b) ** 2).toBeCloseTo(1, 12);
        expect(((px - x) * y) / (b * b) - ((py - y) * x) / (a * a)).toBeCloseTo(0, 11);
        const away = Math.hypot(px - x, py - y);
        for (let t = 0; t < 7; t += 0.1)
          expect(Math.hypot(px - a * Math.cos(t), py - b * Math.sin(t))).toBeGreaterThanOrEqual(away - 1e-9);
      }
  });
  it('from next to nothing to very far away, of round and of thin ellipses', () => {
    for (const b of [5, 4.999, 1, 0.01])
      for (const far of [1e-9, 1e-3, 1, 1e3, 1e9])
        for (const degrees of [0.001, 1, 45, 89, 89.999]) {
          const [px, py] = [far * Math.cos((degrees * Math.PI) / 180), far * Math.sin((degrees * Math.PI) / 180)];
          const [x, y] = nearestOnEllipse([px, py], 5, b);
          expect((x / 5) ** 2 + (y / b) ** 2).toBeCloseTo(1, 13);
          const away = Math.hypot(px - x, py - y);
          for (let t = 0; t < 1.6; t += 0.01)
            expect(Math.hypot(px - 5 * Math.cos(t), py - b * Math.sin(t))).toBeGreaterThanOrEqual(away * (1 - 1e-12));
        }
  });
  it('on the axes', () => {
    expect(nearestOnEllipse([9, 0], 5, 3)).toEqual([5, 0]);
    expect(nearestOnEllipse([-9, 0], 5, 3)).toEqual([-5, 0]);
    expect(nearestOnEllipse([0, -9], 5, 3)).toEqual([0, -3]);
    expect(nearestOnEllipse([0, 1], 5, 3)).toEqual([0, 3]);
    expect(nearestOnEllipse([0, 0], 5, 3)).toEqual([0, 3]);
    expect(nearestOnEllipse([1.6, 0], 5, 3)).toEqual([2.5, expect.closeTo(Math.sqrt(6.75), 12)]);
    expect(nearestOnEllipse([0, 0], 3, 5)).toEqual([3, 0]);
  });
});

describe('circles', () => {
  it('are found again by both fits', () => {
    for (const circleOf of [fitCircle, fitCircleAlgebraic]) {
      const found = circleOf([...arc(7, 7, 0, [100, -50], 6), [NaN, 0]]) as Circle;
      expect(found.radius).toBeCloseTo(7, 10);
      expect(found.x).toBeCloseTo(100, 10);
      expect(found.y).toBeCloseTo(-50, 10);
      expect(found).toMatchObject({ n: 6, missing: 1, centre: [found.x, found.y] });
      expect(found.residualSd).toBeCloseTo(0, 10);
      expect((circleOf([0, 0, 2, 0, 1, 1]) as Circle).residualSd).toBeNaN();
    }
  });
  it('are found again from a part, and their residual deviation is of what the three numbers leave', () => {
    for (const circleOf of [fitCircle, fitCircleAlgebraic])
      for (const [from, to] of [
        [0.2, 2],
        [3, 5],
      ]) {
        const points = arc(7, 7, 0, [100, -50], 6, from, to);
        const found = circleOf(points) as Circle;
        expect(found.radius).toBeCloseTo(7, 8);
        expect(found.x).toBeCloseTo(100, 8);
        expect(found.y).toBeCloseTo(-50, 8);
        const shaken = points.map(([x, y], i): Point => [x, y + 0.2 * (i % 2)]);
        const { x, y, radius, residualSd } = circleOf(shaken) as Circle;
        const squares = shaken.reduce((sum, point) => sum + (Math.hypot(point[0] - x, point[1] - y) - radius) ** 2, 0);
        expect(residualSd ** 2 * 3).toBeCloseTo(squares, 12);
      }
  });
  it('a short arc is too small by the algebraic fit, less so by the geometric', () => {
    const { normal } = random(3);
    const points = arc(50, 50, 0, [0, 0], 60, 0, 0.9).map(([x, y]): Point => [x + 0.5 * normal(), y + 0.5 * normal()]);
    const [plain, fitted] = [fitCircleAlgebraic(points) as Circle, fitCircle(points) as Circle];
    expect(plain.radius).toBeLessThan(fitted.radius);
    expect(fitted.residualSd).toBeCloseTo(0.5, 0);
    expect(fitted.residualSd).toBeLessThanOrEqual(plain.residualSd);
  });
  it('say why where there is none', () => {
    for (const circleOf of [fitCircle, fitCircleAlgebraic]) {
      expect((circleOf([0, 0, 1, 1]) as FitFailure).failure).toMatch(/^Found 2 points where at least 3/);
      expect((circleOf([0, 0, 1, 1, 2, 2, 5, 5]) as FitFailure).failure).toMatch(/^The points lie on one line/);
      expect(isFitFailure(circleOf([1, 1, 1, 1, 1, 1]))).toBe(true);
    }
  });
});

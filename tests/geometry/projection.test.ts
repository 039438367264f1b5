import { describe, expect, it } from 'vitest';
import { type FitFailure, isFitFailure } from '../../lib/geometry/fitFailure.ts';
import { fitProjective, type Projective } from '../../lib/geometry/fitProjective.ts';
import { foreshortening } from '../../lib/geometry/foreshortening.ts';
import { inverse, type Matrix, product } from '../../lib/geometry/matrix.ts';
import { seenAngle, trueAngle } from '../../lib/geometry/obliqueness.ts';
import { type Place, pinhole } from '../../lib/geometry/pinhole.ts';
import { planePose } from '../../lib/geometry/planePose.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { transformPoint, transformPoints } from '../../lib/geometry/transformPoints.ts';
import { random } from '../../lib/stats/random.ts';
import { sd } from '../../lib/stats/sd.ts';

const square: Point[] = [
  [0, 0],
  [100, 0],
  [100, 80],
  [0, 80],
];
const slanted: Matrix = [
  [1.2, 0.1, 30],
  [-0.2, 0.9, 12],
  [0.0004, -0.0007, 1],
];

function near(found: readonly Point[], expected: readonly Point[], digits: number): void {
  found.forEach(([x, y], i) => {
    expect(x).toBeCloseTo(expected[i][0], digits);
    expect(y).toBeCloseTo(expected[i][1], digits);
  });
}

describe('matrices', () => {
  it('the inverse undoes a map, in either order', () => {
    const undone = transformPoints(inverse(slanted), transformPoints(slanted, square));
    near(undone, square, 9);
    product(slanted, inverse(slanted)).forEach((row, r) => {
      row.forEach((value, c) => {
        expect(value).toBeCloseTo(r === c ? 1 : 0, 12);
      });
    });
  });
  it('a product maps first by the second factor', () => {
    const moved: Matrix = [
      [1, 0, 5],
      [0, 1, 0],
      [0, 0, 1],
    ];
    const doubled: Matrix = [
      [2, 0, 0],
      [0, 2, 0],
      [0, 0, 1],
    ];
    expect(transformPoint(product(doubled, moved), [1, 1])).toEqual([12, 2]);
  });
  it('a map that flattens has no inverse', () => {
    const flat: Matrix = [
      [1, 0, 0],
      [2, 0, 0],
      [0, 0, 1],
    ];
    expect(inverse(flat).flat().every(Number.isNaN)).toBe(true);
  });
  it('a point on the horizon, or missing, goes nowhere', () => {
    const map: Matrix = [
      [1, 0, 0],
      [0, 1, 0],
      [1, 0, 1],
    ];
    expect(transformPoints(map, [-1, 4, NaN, 2, 1, 4])).toEqual([
      [NaN, NaN],
      [NaN, NaN],
      [0.5, 2],
    ]);
  });
});

describe('fitProjective', () => {
  it('four points settle it exactly', () => {
    const found = fitProjective(square, transformPoints(slanted, square)) as Projective;
    found.matrix.flat().forEach((value, i) => {
      expect(value).toBeCloseTo(slanted.flat()[i], 10);
    });
    expect(found).toMatchObject({ n: 4, missing: 0, residualSd: NaN });
    expect(found.rmsd).toBeLessThan(1e-10);
  });
  it('in any units, turned, mirrored, far from the origin', () => {
    const { uniform } = random(2);
    for (let turn = 0; turn < 30; turn++) {
      const places = Array.from({ length: 6 }, (): Point => [1e4 + 40 * uniform(), -3e3 + 40 * uniform()]);
      const angle = 7 * uniform();
      const [cos, sin, flip] = [Math.cos(angle), Math.sin(angle), turn % 2 ? 1 : -1];
      const goal = places.map(([x, y]): Point => {
        const depth = 1 + 0.004 * (x - 1e4) + 0.002 * (y + 3e3);
        return [1e-3 * ((cos * x - sin * y) / depth), (1e-3 * flip * (sin * x + cos * y)) / depth];
      });
      const found = fitProjective(places, goal) as Projective;
      near(transformPoints(found.matrix, places), goal, 7);
    }
  });
  it('the squared distances cannot be made less by moving any of its numbers', () => {
    const { normal } = random(7);
    const places = Array.from({ length: 12 }, (_, i): Point => [30 * (i % 4), 25 * Math.floor(i / 4)]);
    const goal = transformPoints(slanted, places).map(([x, y]): Point => [x + normal(), y + normal()]);
    const found = fitProjective(places, goal) as Projective;
    const squares = (matrix: Matrix) =>
      transformPoints(matrix, places).reduce(
        (sum, [x, y], i) => sum + (x - goal[i][0]) ** 2 + (y - goal[i][1]) ** 2,
        0,
      );
    const least = squares(found.matrix);
    expect(least).toBeCloseTo(found.rmsd ** 2 * 12, 9);
    for (let k = 0; k < 8; k++)
      for (const sign of [1, -1]) {
        const numbers = found.matrix.flat();
        numbers[k] *= 1 + sign * 1e-5;
        const moved = [numbers.slice(0, 3), numbers.slice(3, 6), numbers.slice(6)] as unknown as Matrix;
        expect(squares(moved)).toBeGreaterThan(least);
      }
  });
  it('its residual deviation is the noise that was put in, whatever the number of points', () => {
    const { normal } = random(8);
    const places = Array.from({ length: 6 }, (_, i): Point => [50 * (i % 3), 60 * Math.floor(i / 3)]);
    const variances = Array.from({ length: 600 }, () => {
      const goal = transformPoints(slanted, places).map(([x, y]): Point => [x + normal(), y + normal()]);
      return (fitProjective(places, goal) as Projective).residualSd ** 2;
    });
    expect(variances.reduce((sum, value) => sum + value, 0) / 600).toBeCloseTo(1, 0.9);
  });
  it('its residual deviation is of as many coordinates as are left beside the eight numbers', () => {
    const { normal } = random(9);
    for (const count of [5, 7]) {
      const places = Array.from({ length: count }, (_, i): Point => [40 * (i % 3), 25 * i]);
      const goal = transformPoints(slanted, places).map(([x, y]): Point => [x + normal(), y + normal()]);
      const { residuals, residualSd } = fitProjective(places, goal) as Projective;
      const squares = residuals.reduce((sum, away) => sum + away ** 2, 0);
      expect(residualSd ** 2 * (2 * count - 8)).toBeCloseTo(squares, 12);
    }
  });
  it('a map whose horizon goes through the origin has numbers of size 1 in all', () => {
    const horizon: Matrix = [
      [120, 10, 3000],
      [-20, 90, 1200],
      [0.4, 0.7, 0],
    ];
    const places = square.map(([x, y]): Point => [x + 10, y + 10]);
    const { matrix } = fitProjective(places, transformPoints(horizon, places)) as Projective;
    expect(Math.hypot(...matrix.flat())).toBeCloseTo(1, 12);
    near(transformPoints(matrix, places), transformPoints(horizon, places), 8);
  });
  it('leaves a missing pair out and keeps its place among the residuals', () => {
    const goal = transformPoints(slanted, [...square, [50, 50]]);
    const found = fitProjective([...square, [50, 50]], [...goal.slice(0, 4), [NaN, 0]]) as Projective;
    expect([found.n, found.missing]).toEqual([4, 1]);
    expect(found.residuals).toHaveLength(5);
    expect(found.residuals[4]).toBeNaN();
  });
  it('says why where the points settle nothing', () => {
    expect((fitProjective(square.slice(1), square.slice(1)) as FitFailure).failure).toMatch(/^Found 3 points/);
    const lined: Point[] = [
      [0, 0],
      [1, 1],
      [2, 2],
      [5, 0],
    ];
    for (const [from, to] of [
      [lined, square],
      [square, lined],
      [square.map((): Point => [1, 1]), square],
      [square, square.map((): Point => [1, 1])],
    ]) {
      const found = fitProjective(from, to);
      expect(isFitFailure(found)).toBe(true);
      expect((found as FitFailure).failure).toMatch(/^The points settle no projective map/);
    }
  });
});

describe('pinhole', () => {
  const options = { focal: 1000, centre: [500, 400] as const };
  it('square on: right is right, up is up the picture, twice as far is half as large', () => {
    const camera = pinhole({ position: [0, 0, 10], lookAt: [0, 0, 0], ...options });
    expect(camera.project([1, 2, 0])).toEqual([600, 200]);
    expect(camera.project([1, 2, -10])).toEqual([550, 300]);
    expect(camera.project([0, 0, 0])).toEqual([500, 400]);
  });
  it('what lies behind is not in the picture', () => {
    const camera = pinhole({ position: [0, 0, 10], lookAt: [0, 0, 0], ...options });
    expect(camera.project([1, 2, 11])).toEqual([NaN, NaN]);
    expect(camera.project([1, 2, 10])).toEqual([NaN, NaN]);
  });
  it('rolled counter-clockwise, the picture turns clockwise', () => {
    const camera = pinhole({ position: [0, 0, 10], lookAt: [0, 0, 0], roll: 90, ...options });
    const [x, y] = camera.project([1, 0, 0]);
    expect([x, y]).toEqual([expect.closeTo(500, 9), expect.closeTo(500, 9)]);
  });
  it('a look straight down needs another up', () => {
    expect(() => pinhole({ position: [0, 9, 0], lookAt: [0, 0, 0], ...options })).toThrow(/another `up`/);
    const camera = pinhole({ position: [0, 10, 0], lookAt: [0, 0, 0], up: [0, 0, -1], ...options });
    expect(camera.project([1, 0, -2])).toEqual([600, 200]);
    expect(() => pinhole({ position: [0, 9, 0], lookAt: [0, 9, 0], ...options })).toThrow(TypeError);
  });
  it('an up that leans over leans the picture', () => {
    const leaning = pinhole({ position: [1, 2, 10], lookAt: [0, 0, 0], up: [1, 1, 0.5], ...options });
    const [x0, y0] = leaning.project([0, 0, 0]);
    const [x, y] = leaning.project([1, 1, 0.5]);
    expect(x).toBeCloseTo(x0, 9);
    expect(y).toBeLessThan(y0);
  });
  it('the map of a plane agrees with the places on it', () => {
    const camera = pinhole({ position: [3, 5, 20], lookAt: [1, 0, 2], roll: 7, ...options });
    const map = camera.planeMatrix([1, 1, 2], [1, 0, 0], [0, 0.8, 0.6]);
    for (const [x, y] of square) {
      const place: Place = [1 + x / 50, 1 + (0.8 * y) / 50, 2 + (0.6 * y) / 50];
      near([transformPoint(map, [x / 50, y / 50])], [camera.project(place)], 9);
    }
  });
});

describe('planePose', () => {
  const centre: Point = [2000, 1500];
  /** A camera turned, raised and rolled by so many degrees, looking at the plane's origin from 500 away. */
  const posed = (turned: number, raised: number, roll: number) => {
    const [t, r] = [(turned * Math.PI) / 180, (raised * Math.PI) / 180];
    const position: Place = [-500 * Math.sin(t) * Math.cos(r), 500 * Math.sin(r), 500 * Math.cos(t) * Math.cos(r)];
    return { position, camera: pinhole({ position, lookAt: [0, 0, 0], roll, focal: 3500, centre }) };
  };
  it('finds again how the camera stood', () => {
    for (const [turned, raised, roll] of [
      [0, 0, 0],
      [12, 0, 0],
      [0, -8, 0],
      [0, 0, 5],
      [-20, 10, -30],
      [35, 25, 100],
    ]) {
      const { position, camera } = posed(turned, raised, roll);
      const seen = square.map(([x, y]) => camera.project([x, y, 0]));
      const found = planePose((fitProjective(square, seen) as Projective).matrix, 3500, centre);
      expect(found.turned).toBeCloseTo(turned, 6);
      expect(found.raised).toBeCloseTo(raised, 6);
      expect(found.rolled).toBeCloseTo(roll, 6);
      found.position.forEach((value, i) => {
        expect(value).toBeCloseTo(position[i], 5);
      });
    }
  });
  it('does not mind the sign or size of the map', () => {
    const { camera } = posed(10, 5, 3);
    const map = camera.planeMatrix([0, 0, 0], [1, 0, 0], [0, 1, 0]);
    const other = map.map((row) => row.map((value) => -7 * value)) as unknown as Matrix;
    expect(planePose(other, 3500, centre).turned).toBeCloseTo(10, 8);
    expect(planePose(other, 3500, centre).position[2]).toBeGreaterThan(0);
  });
  it('shares out between the axes what skews the map', () => {
    const { camera } = posed(0, 0, 0);
    const skewed = planePose(camera.planeMatrix([30, 40, 0], [1, 0, 0], [0.02, 1, 0]), 3500, centre);
    expect(skewed.rolled).toBeCloseTo((0.01 * 180) / Math.PI, 2);
    expect(skewed.turned).toBeCloseTo(0, 9);
    expect(Math.hypot(...skewed.position)).toBeCloseTo(Math.hypot(30, 40, 500), 0);
    expect(skewed.position[0]).toBeCloseTo(-30, 0);
    expect(skewed.position[1]).toBeCloseTo(-40, 0);
  });
  it('stays near under a pixel of placing noise', () => {
    const { camera } = posed(6, -4, 2);
    const { normal } = random(31);
    const poses = Array.from({ length: 200 }, () => {
      const seen = square.map(([x, y]): Point => {
        const [u, v] = camera.project([x, y, 0]);
        return [u + normal(), v + normal()];
      });
      return planePose((fitProjective(square, seen) as Projective).matrix, 3500, centre);
    });
    expect(sd(poses.map(({ turned }) => turned))).toBeLessThan(1.5);
    expect(sd(poses.map(({ rolled }) => rolled))).toBeLessThan(0.2);
  });
});

describe('foreshortening', () => {
  it('says how much and in which direction a plane is shortened', () => {
    const found = foreshortening(
      [
        [2, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
      ],
      [3, 4],
    );
    expect(found).toMatchObject({ longest: 2, shortest: 1, ratio: 0.5, direction: 90 });
    expect(found.obliqueness).toBeCloseTo(60, 12);
    expect(
      foreshortening(
        [
          [1, 0, 0],
          [0, 3, 0],
          [0, 0, 1],
        ],
        [0, 0],
      ).direction,
    ).toBe(0);
  });
  it('of a square-on picture is none', () => {
    const camera = pinhole({ position: [0, 0, 300], lookAt: [0, 0, 0], focal: 3000, centre: [0, 0] });
    const found = foreshortening(camera.planeMatrix([0, 0, 0], [1, 0, 0], [0, 1, 0]), [0, 0]);
    expect(found.longest).toBeCloseTo(10, 12);
    expect(found.ratio).toBeCloseTo(1, 12);
  });
  it('differs from place to place where the camera is near, as small steps show', () => {
    const at: Point = [40, 30];
    const found = foreshortening(slanted, at);
    const step = 1e-6;
    const [[x0, y0], [x1, y1], [x2, y2]] = transformPoints(slanted, [at, [40 + step, 30], [40, 30 + step]]);
    const area = ((x1 - x0) * (y2 - y0) - (x2 - x0) * (y1 - y0)) / step ** 2;
    expect(found.longest * found.shortest).toBeCloseTo(Math.abs(area), 6);
    const lengthAt = (direction: number) => {
      const [dx, dy] = [Math.cos((direction * Math.PI) / 180), Math.sin((direction * Math.PI) / 180)];
      const [x, y] = transformPoint(slanted, [at[0] + step * dx, at[1] + step * dy]);
      return Math.hypot(x - x0, y - y0) / step;
    };
    expect(lengthAt(found.direction)).toBeCloseTo(found.shortest, 5);
    expect(lengthAt(found.direction + 90)).toBeCloseTo(found.longest, 5);
    expect(found.direction).toBeGreaterThanOrEqual(0);
    expect(found.direction).toBeLessThan(180);
  });
});

describe('obliqueness', () => {
  it('square on changes nothing; level and upright lines stay so', () => {
    expect(seenAngle(50, {})).toBeCloseTo(50, 12);
    for (const oblique of [{ turned: 25 }, { raised: 25 }]) {
      expect(seenAngle(0, oblique)).toBeCloseTo(0, 12);
      expect(seenAngle(90, oblique)).toBeCloseTo(90, 12);
      expect(seenAngle(130, oblique)).toBeCloseTo(180 - seenAngle(50, oblique), 12);
    }
  });
  it('the true angle behind a seen one is the way back', () => {
    for (const angle of [1, 45, 90, 170])
      for (const turned of [-30, 0, 18])
        for (const raised of [-12, 0, 40])
          expect(trueAngle(seenAngle(angle, { turned, raised }), { turned, raised })).toBeCloseTo(angle, 10);
  });
});

import { createRequire } from 'node:module';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Ellipse } from '../../lib/geometry/ellipse.ts';
import { fitEllipse } from '../../lib/geometry/fitEllipse.ts';
import { fitProjective, type Projective } from '../../lib/geometry/fitProjective.ts';
import { type Matrix, rows } from '../../lib/geometry/matrix.ts';
import { pinhole } from '../../lib/geometry/pinhole.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { transformPoint, transformPoints } from '../../lib/geometry/transformPoints.ts';
import { random } from '../../lib/stats/random.ts';
import { closeTo } from './stats/read.ts';

// OpenCV 4.12 as built for JavaScript. It keeps points and boxes as 32-bit numbers and stops its refinement early, so
// ellipses agree to 1e-4 pixels, and of two homographies that agree to 1e-3 pixels ours must be the nearer one.
// biome-ignore lint/suspicious/noExplicitAny: the package's types leave out the functions used here
let cv: any;
beforeAll(async () => {
  // The module has a `then` that never ends, so nothing may await it, `import` included.
  cv = createRequire(import.meta.url)('@techstark/opencv-js');
  if (!cv.Mat)
    await new Promise<void>((ready) => {
      cv.onRuntimeInitialized = () => ready();
    });
});

const matOf = (points: readonly Point[]) =>
  cv.matFromArray(points.length, 1, cv.CV_32FC2, points.flat().map(Math.fround));
const rounded = (points: readonly Point[]) => points.map(([x, y]): Point => [Math.fround(x), Math.fround(y)]);

describe('against OpenCV', () => {
  it('direct ellipses through shaken points', () => {
    const { normal, uniform } = random(8);
    for (let turn = 0; turn < 20; turn++) {
      const [a, b, t] = [40 + 40 * uniform(), 20 + 15 * uniform(), Math.PI * uniform()];
      const points = rounded(
        Array.from({ length: 12 + turn }, (): Point => {
          const s = 2 * Math.PI * uniform();
          const [u, v] = [a * Math.cos(s) + normal(), b * Math.sin(s) + normal()];
          return [u * Math.cos(t) - v * Math.sin(t) + 300, u * Math.sin(t) + v * Math.cos(t) + 200];
        }),
      );
      const box = cv.fitEllipseDirect(matOf(points));
      const found = fitEllipse(points) as Ellipse;
      closeTo([found.x, found.y], [box.center.x, box.center.y], 0, 1e-4);
      closeTo([2 * found.semiMajor, 2 * found.semiMinor], [box.size.height, box.size.width], 0, 5e-4);
      // Its angle is that of the box's shorter side.
      closeTo(Math.sin(((found.turn - box.angle - 90) * Math.PI) / 180), 0, 0, 1e-5);
    }
  });
  it('homographies of shaken points', () => {
    const { normal, uniform } = random(9);
    const board: Point[] = Array.from({ length: 9 }, (_, i) => [40 * (i % 3), 30 * Math.floor(i / 3)]);
    for (let turn = 0; turn < 20; turn++) {
      const position = [-80 + 160 * uniform(), 160 * uniform(), 500] as const;
      const camera = pinhole({ position, lookAt: [40, 30, 0], focal: 3000, centre: [2000, 1500] });
      const seen = rounded(
        board.map(([x, y]): Point => {
          const [u, v] = camera.project([x, y, 0]);
          return [u + normal(), v + normal()];
        }),
      );
      const theirs = cv.findHomography(matOf(board), matOf(seen)).data64F;
      const ours = fitProjective(board, seen) as Projective;
      const distances = (matrix: Matrix) =>
        transformPoints(matrix, board).reduce(
          (sum, [x, y], i) => sum + (x - seen[i][0]) ** 2 + (y - seen[i][1]) ** 2,
          0,
        );
      expect(distances(ours.matrix)).toBeLessThanOrEqual(distances(rows((r, c) => theirs[3 * r + c])) * (1 + 1e-12));
      transformPoints(ours.matrix, board).forEach(([x, y], i) => {
        const [u, v] = transformPoint(
          rows((r, c) => theirs[3 * r + c]),
          board[i],
        );
        closeTo([x, y], [u, v], 0, 1e-3);
      });
    }
  });
});

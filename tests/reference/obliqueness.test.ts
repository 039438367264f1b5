import { describe, expect, it } from 'vitest';
import { fitProjective, type Projective } from '../../lib/geometry/fitProjective.ts';
import { foreshortening } from '../../lib/geometry/foreshortening.ts';
import { lineThrough } from '../../lib/geometry/line.ts';
import { lineAngleTo } from '../../lib/geometry/lineAngle.ts';
import { seenAngle, trueAngle } from '../../lib/geometry/obliqueness.ts';
import { type Place, pinhole } from '../../lib/geometry/pinhole.ts';
import type { Point } from '../../lib/geometry/points.ts';
import { transformPoints } from '../../lib/geometry/transformPoints.ts';

// Parallel projection of a true angle of 50 degrees, computed by hand: turned t, tan a' = tan a / cos t; raised r,
// tan a' = tan a · cos r. To the two decimals written down.
const off = [2, 5, 10, 15, 20, 30];
const turned = [50.02, 50.11, 50.43, 50.97, 51.74, 53.99];
const raised = [49.98, 49.89, 49.57, 49.02, 48.24, 45.9];

/** The angle that a camera far away sees between a line at `angle` in the plane z = 0 and the ground. */
function seenFromAfar(angle: number, turn: number, raise: number): number {
  const [t, r, a] = [turn, raise, angle].map((degrees) => (degrees * Math.PI) / 180);
  const away = 1e6;
  const position: Place = [-away * Math.sin(t) * Math.cos(r), away * Math.sin(r), away * Math.cos(t) * Math.cos(r)];
  const camera = pinhole({ position, lookAt: [0, 0, 0], focal: 1e8, centre: [0, 0] });
  const yUp = ([x, y]: Point): Point => [x, -y];
  const [corner, along, up] = [
    [0, 0, 0] as const,
    [10, 0, 0] as const,
    [10 * Math.cos(a), 10 * Math.sin(a), 0] as const,
  ].map((place) => yUp(camera.project(place)));
  return lineAngleTo(lineThrough(corner, up), lineThrough(corner, along));
}

describe('a picture that is not square on', () => {
  it.each(off.map((degrees, i) => [degrees, turned[i], raised[i]]))('by %d degrees', (degrees, turn, raise) => {
    expect(seenAngle(50, { turned: degrees })).toBeCloseTo(turn, 2);
    expect(seenAngle(50, { raised: degrees })).toBeCloseTo(raise, 2);
  });
  it('a distant pinhole camera sees the same', () => {
    for (const degrees of off) {
      expect(seenFromAfar(50, degrees, 0)).toBeCloseTo(seenAngle(50, { turned: degrees }), 3);
      expect(seenFromAfar(50, 0, degrees)).toBeCloseTo(seenAngle(50, { raised: degrees }), 3);
    }
  });
  it('turned and raised together, obtuse angles too', () => {
    for (const angle of [20, 50, 90, 130])
      for (const turn of [-15, 8])
        for (const raise of [-10, 12]) {
          const seen = seenAngle(angle, { turned: turn, raised: raise });
          expect(seenFromAfar(angle, turn, raise)).toBeCloseTo(seen, 3);
          expect(trueAngle(seen, { turned: turn, raised: raise })).toBeCloseTo(angle, 9);
        }
  });
  it('a near camera is undone by four known points of the plane', () => {
    const camera = pinhole({
      position: [-80, 60, 400],
      lookAt: [5, 30, 0],
      roll: 4,
      focal: 3000,
      centre: [2000, 1500],
    });
    const flat = (points: Point[]) => points.map(([x, y]) => camera.project([x, y, 0]));
    const board: Point[] = [
      [-50, -10],
      [60, -10],
      [60, 70],
      [-50, 70],
    ];
    const { matrix } = fitProjective(flat(board), board) as Projective;
    const measured: Point[] = [
      [0, 0],
      [30, 20],
      [-12, 44],
    ];
    transformPoints(matrix, flat(measured)).forEach(([x, y], i) => {
      expect(x).toBeCloseTo(measured[i][0], 9);
      expect(y).toBeCloseTo(measured[i][1], 9);
    });
  });
  it('the plane’s own map says how far off square it is', () => {
    for (const degrees of off) {
      const t = (degrees * Math.PI) / 180;
      const position: Place = [-1e6 * Math.sin(t), 0, 1e6 * Math.cos(t)];
      const camera = pinhole({ position, lookAt: [0, 0, 0], focal: 1e8, centre: [0, 0] });
      const found = foreshortening(camera.planeMatrix([0, 0, 0], [1, 0, 0], [0, 1, 0]), [0, 0]);
      expect(found.obliqueness).toBeCloseTo(degrees, 4);
      expect(Math.min(found.direction, 180 - found.direction)).toBeCloseTo(0, 4);
    }
  });
});

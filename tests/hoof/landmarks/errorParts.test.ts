import { describe, expect, it } from 'vitest';
import { measuresFromPoints } from '../../../lib/hoof/landmarks/measuresFromPoints.ts';
import type { PictureMeasures } from '../../../lib/hoof/landmarks/pictureMeasures.ts';
import { random } from '../../../lib/stats/random.ts';
import { bar, board, flatPoints, valuesOf } from './pictures.ts';

const errorsOf = ({ measures }: PictureMeasures) =>
  Object.fromEntries(measures.map(({ name, error }) => [name, error]));
const partsOf = ({ measures }: PictureMeasures, name: string) => measures.find((one) => one.name === name)!.parts;
const points = flatPoints('side', 'LF', { turned: 6, raised: 4, distance_mm: 1000 }, board);

describe('the error of a measure', () => {
  it('is the spread that noise of that size makes, over 300 placings of one picture', () => {
    const options = { placing_px: 1, depth: false };
    const { normal } = random(11);
    const sums = new Map<string, { sum: number; squares: number }>();
    const rounds = 300;
    for (let round = 0; round < rounds; round++) {
      const noisy = points.map((row) => ({ ...row, x_px: row.x_px + normal(), y_px: row.y_px + normal() }));
      const size = { ...board, width_mm: 120 + 0.3 * normal(), height_mm: 120 + 0.3 * normal(), error_mm: 0.3 };
      for (const [name, value] of Object.entries(valuesOf(measuresFromPoints('side', noisy, size, 'LF', options)))) {
        const { sum, squares } = sums.get(name) ?? { sum: 0, squares: 0 };
        sums.set(name, { sum: sum + value, squares: squares + value * value });
      }
    }
    const errors = errorsOf(measuresFromPoints('side', points, { ...board, error_mm: 0.3 }, 'LF', options));
    expect(sums.size).toBe(5);
    for (const [name, { sum, squares }] of sums) {
      const spread = Math.sqrt((squares - sum ** 2 / rounds) / (rounds - 1));
      // A deviation of 300 is known to 4 of 100, one standard error.
      expect(errors[name] / spread, name).toBeGreaterThan(0.87);
      expect(errors[name] / spread, name).toBeLessThan(1.15);
    }
  });
  it('grows with the placing error in proportion, and its parts add up in squares', () => {
    const [fine, coarse] = [1, 2].map((placing_px) =>
      measuresFromPoints('side', points, { ...board, error_mm: 0 }, 'LF', { placing_px, depth: false }),
    );
    for (const { name, error, parts } of fine.measures) {
      expect(Math.hypot(...Object.values(parts)), name).toBeCloseTo(error, 12);
      expect(errorsOf(coarse)[name] / error, name).toBeCloseTo(2, 2);
    }
  });
  it('of a size that is wrong by a hundredth is a hundredth of a length and nothing of an angle', () => {
    const square = flatPoints('side', 'LF', {}, bar);
    const found = measuresFromPoints('side', square, { ...bar, error_mm: 1 }, 'LF', { placing_px: 1e-6 });
    expect(partsOf(found, 'toe_length_mm').scale).toBeCloseTo(0.82, 4);
    expect(partsOf(found, 'toe_angle_deg').scale).toBeLessThan(1e-4);
  });
  it('says nothing of squareness where a board tells it, and of depth only where landmarks may lie off the plane', () => {
    const told = measuresFromPoints('side', points, board, 'LF', { depth: false });
    for (const { parts } of told.measures) expect([parts.squareness, parts.depth]).toEqual([0, 0]);
    const deep = measuresFromPoints('side', points, board, 'LF', { placing_px: 0.1 });
    expect(partsOf(deep, 'toe_angle_deg').depth).toBeGreaterThan(0.1);
  });
  it('with a bar counts a camera 5 degrees off either way: for 50 degrees turned alone that is 0.11, raised alone as much', () => {
    const square = flatPoints('side', 'LF', {}, bar);
    const found = measuresFromPoints('side', square, bar, 'LF', { depth: false, distance_mm: 1e9 });
    const angle = (52 * Math.PI) / 180;
    const sigma = (5 * Math.PI) / 180;
    // To second order the seen angle is off by sin a cos a (t² − r²)/2 + sin² a · t r; the mean square of that over two
    // normal deviates is a fourth of sin² a cos² a · 4 σ⁴ plus sin⁴ a · σ⁴.
    const meanSquare = sigma ** 4 * ((Math.sin(angle) * Math.cos(angle)) ** 2 + Math.sin(angle) ** 4);
    const expected = (Math.sqrt(meanSquare) * 180) / Math.PI;
    expect(partsOf(found, 'toe_angle_deg').squareness / expected).toBeGreaterThan(0.95);
    expect(partsOf(found, 'toe_angle_deg').squareness / expected).toBeLessThan(1.05);
  });
});

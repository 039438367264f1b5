import { describe, expect, it } from 'vitest';
import { isFitFailure } from '../../../lib/geometry/fitFailure.ts';
import type { Similarity } from '../../../lib/geometry/fitSimilarity.ts';
import { transformPoint } from '../../../lib/geometry/transformPoints.ts';
import { layOver } from '../../../lib/hoof/landmarks/layOver.ts';
import { bar, board, flatPoints, views } from './pictures.ts';

describe('two pictures of one foot', () => {
  it('fall on each other whatever their scale and roll, in every view', () => {
    for (const view of views) {
      const under = flatPoints(view, 'LF', { field_mm: 460, rolled: 0 }, board);
      const over = flatPoints(view, 'LF', { field_mm: 620, rolled: 12 }, board);
      const fit = layOver(view, { points: under, scale: board }, { points: over, scale: board }) as Similarity;
      expect(fit.scale).toBeCloseTo(620 / 460, 6);
      over.forEach(({ x_px, y_px }, i) => {
        const [x, y] = transformPoint(fit.matrix, [x_px, y_px]);
        expect(Math.hypot(x - under[i].x_px, y - under[i].y_px), `${view} ${under[i].point}`).toBeLessThan(1e-3);
      });
    }
  });
  it('keep their own difference: only scale, ground line and where the foot stands are brought together', () => {
    const before = flatPoints('side', 'LF', {}, board);
    const after = before.map((row) => (row.point === 'toe_hairline' ? { ...row, x_px: row.x_px + 50 } : row));
    const fit = layOver('side', { points: before, scale: board }, { points: after, scale: board }) as Similarity;
    expect(fit.scale).toBeCloseTo(1, 9);
    expect(Math.abs(fit.turn)).toBeLessThan(1e-6);
  });
  it('may each have another scale beside the foot', () => {
    const [under, over] = [flatPoints('front', 'RH', {}, board), flatPoints('front', 'RH', { field_mm: 600 }, bar)];
    const fit = layOver('front', { points: under, scale: board }, { points: over, scale: bar }) as Similarity;
    expect(fit.scale).toBeCloseTo(600 / 460, 6);
  });
  it('can’t be laid over each other without a known size, a common place or a ground line, and it says so', () => {
    const points = flatPoints('side', 'LF', {}, board);
    const failure = (other: Parameters<typeof layOver>[1]) => {
      const fit = layOver('side', { points, scale: board }, other);
      return isFitFailure(fit) ? fit.failure : '';
    };
    expect(failure({ points, scale: undefined })).toContain('A known size was expected in both pictures');
    const footless = points.filter(({ point }) => !/^(toe|heel)_ground$/.test(point));
    expect(failure({ points: footless, scale: board })).toContain('A place where the foot stands was expected');
    const groundless = points.filter(({ point }) => point !== 'ground' && point !== 'heel_ground');
    expect(failure({ points: groundless, scale: board })).toContain('A ground line was expected in both pictures');
  });
});

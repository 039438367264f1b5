import { describe, expect, it } from 'vitest';
import { hoofScene } from '../../../lib/hoof/landmarks/hoofScene.ts';
import { measuresFromPoints } from '../../../lib/hoof/landmarks/measuresFromPoints.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import { squareness } from '../../../lib/hoof/landmarks/squareness.ts';
import { board, flatPoints, views } from './pictures.ts';

const sight = (turn: number, tilt: number) => ({
  slope: [Math.tan((turn * Math.PI) / 180), -Math.tan((tilt * Math.PI) / 180)] as const,
  distance_mm: 1000,
});

describe('where the camera stood', () => {
  it('is told by the board alone, to a degree at the middle of the foot', () => {
    for (const view of views)
      for (const [turned, raised] of [
        [9, 0],
        [-9, 0],
        [0, 8],
        [0, -8],
        [6, -5],
      ]) {
        const points = flatPoints(view, 'RF', { turned, raised, distance_mm: 4000, rolled: 2 }, board);
        const found = measuresFromPoints(view, points, board, 'RF').squareness!;
        expect(Math.abs(found.turn_deg - turned), `${view} ${turned}`).toBeLessThan(1.3);
        expect(Math.abs(found.tilt_deg - raised), `${view} ${raised}`).toBeLessThan(1.3);
        expect(found.usable).toBe(true);
      }
  });
  it('is told exactly where the camera is known, the way from it to the foot counting', () => {
    const scene = hoofScene(parametricHoof('LF'), 'below', { turned: 9, raised: -4, distance_mm: 1500 }, board);
    const camera = { focal_px: scene.focal_px, width_px: scene.width_px, height_px: scene.height_px };
    const { turn_deg, tilt_deg, off_deg } = measuresFromPoints('below', scene.points, board, 'LF', { camera })
      .squareness!;
    expect(turn_deg).toBeCloseTo(9, 0);
    expect(tilt_deg).toBeCloseTo(-4, 0);
    expect(off_deg).toBeGreaterThan(Math.abs(turn_deg));
  });
  it('is put in words that say which way', () => {
    expect(squareness(sight(0.2, -0.3), 'side').words).toBe('The camera stood square to the board: square enough');
    expect(squareness(sight(8, 3), 'side').words).toMatch(
      /^The camera stood 8° too far to the left and 3° too high\. /,
    );
    expect(squareness(sight(-6, -6), 'front').words).toContain('6° too far to the right and 6° too low');
    expect(squareness(sight(0, 8), 'below').words).toContain('8° too far towards the top of the picture');
  });
  it('is no longer usable beyond 15 degrees, and what helps depends on which way it is off', () => {
    expect(squareness(sight(14.9, 0), 'side').usable).toBe(true);
    expect(squareness(sight(15.1, 0), 'side')).toMatchObject({
      usable: false,
      words: expect.stringContaining('Step to the right'),
    });
    expect(squareness(sight(-16, 2), 'side').words).toContain('Step to the left');
    expect(squareness(sight(3, 20), 'rear').words).toContain('Hold the camera at the height of the foot');
    expect(squareness(sight(20, 3), 'below').words).toContain('straight over the sole');
  });
});

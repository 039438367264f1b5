import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import type { Point } from '../../../lib/geometry/points.ts';
import { hoofPicture } from '../../../lib/hoof/landmarks/hoofPicture.ts';
import { hoofScene } from '../../../lib/hoof/landmarks/hoofScene.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import { limbs, sideOf } from '../../../lib/hoof/limbs.ts';
import { bar, board, views } from './pictures.ts';

describe('an invented picture', () => {
  it.each(views)('from the %s holds the foot, its scale and every landmark', (view) => {
    for (const scale of [board, bar]) {
      const scene = hoofScene(parametricHoof('RF'), view, { turned: 6, raised: 4, rolled: 3 }, scale);
      for (const { point, x_px, y_px } of scene.points) {
        expect(x_px, point).toBeGreaterThan(0);
        expect(x_px, point).toBeLessThan(scene.width_px);
        expect(y_px, point).toBeGreaterThan(0);
        expect(y_px, point).toBeLessThan(scene.height_px);
      }
      const tissues = new Set(scene.patches.map(({ of }) => of));
      expect(tissues.has('frog')).toBe(view === 'below');
      expect(tissues.has('ground')).toBe(view !== 'below');
      expect(tissues.has(scale.kind === 'board' ? 'board' : 'bar_scale')).toBe(true);
    }
  });
  it('is an SVG document as large as a photograph of 12 megapixels, with nothing in it that moves or loads', () => {
    const text = hoofPicture(hoofScene(parametricHoof('LF'), 'side', {}, board));
    const { document } = parseHTML(text);
    const picture = document.querySelector('svg')!;
    expect([picture.getAttribute('width'), picture.getAttribute('height')]).toEqual(['4000', '3000']);
    expect(picture.querySelectorAll('path').length).toBeGreaterThan(300);
    expect(picture.querySelectorAll('circle')).toHaveLength(4);
    expect(text).not.toMatch(/NaN|Infinity|href|script|<image/);
  });
  it('shows a board of the size that it has: a known number of pixels to the mm square on', () => {
    const scene = hoofScene(parametricHoof('LF'), 'side', { field_mm: 500, width_px: 2000, height_px: 1500 }, board);
    const [left, right] = ['board_lower_left', 'board_lower_right'].map(
      (code) => scene.points.find(({ point }) => point === code)!,
    );
    expect(right.x_px - left.x_px).toBeCloseTo(480, 6);
    expect(right.y_px).toBeCloseTo(left.y_px, 6);
  });
  it.each(views)('from the %s has its scale beside the foot, on the ground, and touches it nowhere', (view) => {
    for (const limb of limbs)
      for (const scale of [board, bar]) {
        const scene = hoofScene(parametricHoof(limb), view, {}, scale);
        const patchOf = (name: string) => scene.patches.filter(({ of }) => of === name);
        const spread = (points: readonly Point[], c: 0 | 1) => {
          const values = points.map((point) => point[c]);
          return [Math.min(...values), Math.max(...values)];
        };
        const horn = scene.patches.filter(({ of }) => of === 'horn').flatMap(({ points }) => points);
        const [thing, ...others] = patchOf(scale.kind === 'board' ? 'board' : 'bar_scale');
        expect(others).toEqual([]);
        const [[left, right], [first, last]] = [spread(thing.points, 0), spread(horn, 0)];
        const before = view === 'side' && sideOf(limb) === 'left';
        expect(before ? first - right : left - last, limb).toBeGreaterThan(0);
        expect(before ? first - right : left - last, limb).toBeLessThan(300);
        const pixels = 4000 / 460;
        const [high, low] = spread(thing.points, 1);
        expect(low - high).toBeCloseTo(pixels * (scale.kind === 'board' ? 120 : 8), 6);
        expect(right - left).toBeCloseTo(pixels * (scale.kind === 'board' ? 120 : 100), 6);
        const ground = scene.points.find(({ point }) => point === 'ground');
        // Held up, a foot has its scale beside the middle.
        expect(low).toBeCloseTo(ground?.y_px ?? 1500 + (low - high) / 2, 6);
        if (scale.kind === 'board')
          for (const point of scene.points.filter((one) => one.point.startsWith('board')))
            expect(thing.points.some(([x, y]) => Math.hypot(x - point.x_px, y - point.y_px) < 1e-6)).toBe(true);
      }
  });
  it('has the ground under the foot from edge to edge, up to a horizon above it', () => {
    for (const view of ['side', 'front', 'rear'] as const) {
      const { patches, points, width_px, height_px } = hoofScene(parametricHoof('RF'), view, { raised: 5 });
      expect(patches[0].of).toBe('ground');
      const [near, nearToo, far, farToo] = patches[0].points;
      expect(near[0]).toBeLessThan(0);
      expect(nearToo[0]).toBeGreaterThan(width_px);
      expect(farToo[0]).toBeLessThan(0);
      expect(far[0]).toBeGreaterThan(width_px);
      expect(Math.min(near[1], nearToo[1])).toBeGreaterThan(height_px);
      for (const { y_px } of points.filter(({ point }) => point === 'ground')) {
        expect(far[1]).toBeLessThan(y_px);
        expect(farToo[1]).toBeLessThan(y_px);
      }
    }
  });
  it('has the pieces of the foot from the furthest to the nearest, and the sole last', () => {
    const seen = hoofScene(parametricHoof('RF'), 'below').patches.map(({ of }) => of);
    const first = seen.indexOf('sole');
    expect(first).toBeGreaterThan(300);
    expect(seen.slice(first).some((of) => of === 'horn' || of === 'hair' || of === 'skin')).toBe(false);
    const front = hoofScene(parametricHoof('RF'), 'front').patches.map(({ of }) => of);
    // The toe is nearer than what is behind it.
    expect(front.lastIndexOf('horn')).toBeGreaterThan(front.lastIndexOf('skin'));
    expect(hoofScene(parametricHoof('RF'), 'rear').patches.findIndex(({ of }) => of === 'horn')).toBeLessThan(20);
  });
  it('is the brighter the more a piece faces the camera', () => {
    const lights = (view: (typeof views)[number]) =>
      hoofScene(parametricHoof('RF'), view).patches.filter(({ of }) => of === 'sole' || of === 'horn');
    const [sole] = lights('below').filter(({ of }) => of === 'sole');
    expect(sole.light).toBeCloseTo(1, 2);
    const horn = lights('front').map(({ light }) => light);
    expect(Math.max(...horn)).toBeLessThanOrEqual(1);
    expect(Math.max(...horn)).toBeGreaterThan(0.85);
    expect(Math.min(...horn)).toBeGreaterThanOrEqual(0.55);
    expect(Math.min(...horn)).toBeLessThan(0.7);
  });
  it('is painted in whole colours, its numbers to a hundredth of a pixel', () => {
    const scene = {
      ...hoofScene(parametricHoof('LF'), 'side'),
      patches: [
        {
          of: 'frog',
          light: 0.5,
          points: [
            [1.234, 2.345],
            [10, 20.006],
            [0.5, 7],
          ],
        },
        {
          of: 'bar_scale',
          light: 1,
          points: [
            [0, 0],
            [9, 0],
            [9, 1],
          ],
        },
      ],
    } as const;
    expect(hoofPicture(scene).split('\n').slice(2)).toEqual([
      '<path d="M1.23 2.35L10 20.01L0.5 7Z" fill="rgb(61 55 49)" stroke="rgb(61 55 49)" stroke-width="2.5"/>',
      '<path d="M0 0L9 0L9 1Z" fill="rgb(248 246 240)" stroke="rgb(41 42 41)" stroke-width="2.5"/>',
      '</svg>',
      '',
    ]);
  });
});

import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { hoofPicture } from '../../../lib/hoof/landmarks/hoofPicture.ts';
import { hoofScene } from '../../../lib/hoof/landmarks/hoofScene.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
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
});

import { expect, it } from 'vitest';
import { hoofScene } from '../../../lib/hoof/landmarks/hoofScene.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import { pictureSide } from '../../../lib/hoof/landmarks/pictureSide.ts';
import { limbs } from '../../../lib/hoof/limbs.ts';

it('inside and outside are where a camera sees them, in every limb', () => {
  const pairs = { front: 'hairline', rear: 'heel_hairline', below: 'widest' } as const;
  for (const limb of limbs)
    for (const view of ['front', 'rear', 'below'] as const) {
      const { points } = hoofScene(parametricHoof(limb), view);
      const x = (side: string) => points.find(({ point }) => point === `${side}_${pairs[view]}`)!.x_px;
      const inside = x('medial') < x('lateral') ? 'left' : 'right';
      expect(pictureSide(view, limb, 'medial'), `${limb} ${view}`).toBe(inside);
      expect(pictureSide(view, limb, 'lateral'), `${limb} ${view}`).not.toBe(inside);
    }
});

it('seen from before, the inside of a left foot lies to the left; from behind, to the right', () => {
  expect(pictureSide('front', 'LF', 'medial')).toBe('left');
  expect(pictureSide('rear', 'LF', 'medial')).toBe('right');
  expect(pictureSide('front', 'RH', 'medial')).toBe('right');
});

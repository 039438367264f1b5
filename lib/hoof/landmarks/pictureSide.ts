import { type Limb, sideOf } from '../limbs.ts';
import type { PictureView } from './placedPoint.ts';

/**
 * On which side of the picture the inside or the outside of a foot lies: seen from the front, from behind, or from below
 * with the toe up.
 * @example pictureSide('front', 'LF', 'medial') // 'left'
 */
export function pictureSide(
  view: Exclude<PictureView, 'side'>,
  limb: Limb,
  side: 'medial' | 'lateral',
): 'left' | 'right' {
  const left = sideOf(limb) === 'left';
  const insideIsLeft = view === 'rear' ? !left : left;
  return insideIsLeft === (side === 'medial') ? 'left' : 'right';
}

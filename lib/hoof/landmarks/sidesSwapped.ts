import { centreOf, type Point } from '../../geometry/points.ts';
import type { Limb } from '../limbs.ts';
import { between } from './groundLine.ts';
import { isThere, type Located } from './located.ts';
import { pictureSide } from './pictureSide.ts';
import type { PictureView } from './placedPoint.ts';
import { landmarkView } from './views.ts';

/**
 * Whether inside points were placed where the outside of this foot lies, as when the picture is of the other foot of the
 * pair or is mirrored.
 * @param at the points, y up
 * @returns false where there are not points of both sides, or from below no telling which way the toe lies
 */
export function sidesSwapped(view: PictureView, at: Located, limb: Limb): boolean {
  if (view === 'side') return false;
  const middles = (['medial', 'lateral'] as const).map((side) =>
    centreOf(
      landmarkView(view)
        .landmarks.filter((landmark) => landmark.side === side)
        .map(({ code }) => at.one(code))
        .filter(isThere),
    ),
  );
  const inwards = between(middles[1], middles[0]);
  const up = view === 'below' ? toeWards(at) : ([0, 1] as const);
  const leftward = up[0] * inwards[1] - up[1] * inwards[0];
  return pictureSide(view, limb, 'medial') === 'left' ? leftward < 0 : leftward > 0;
}

/** From the heels to the toe, or from the frog's base to its tip. */
function toeWards(at: Located): Point {
  const foot = between(centreOf([at.one('medial_heel'), at.one('lateral_heel')]), at.one('toe'));
  const frog = between(centreOf([at.one('medial_frog'), at.one('lateral_frog')]), at.one('frog_tip'));
  return isThere(foot) ? foot : frog;
}

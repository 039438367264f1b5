import type { Place } from '../../geometry/pinhole.ts';
import { type Limb, sideOf } from '../limbs.ts';
import type { PictureView } from './placedPoint.ts';

/** Which way a picture's right, its up and its viewer lie, in a foot whose x is the horse's left, y up and z forward. */
export interface ViewFrame {
  readonly right: Place;
  readonly up: Place;
  readonly viewer: Place;
}

const frames: Readonly<Record<Exclude<PictureView, 'side'>, ViewFrame>> = {
  front: { right: [1, 0, 0], up: [0, 1, 0], viewer: [0, 0, 1] },
  rear: { right: [-1, 0, 0], up: [0, 1, 0], viewer: [0, 0, -1] },
  below: { right: [1, 0, 0], up: [0, 0, 1], viewer: [0, -1, 0] },
};

/** The frame of a view; from the side a foot is seen from its outside. */
export function viewFrame(view: PictureView, limb: Limb): ViewFrame {
  if (view !== 'side') return frames[view];
  const left = sideOf(limb) === 'left' ? 1 : -1;
  return { right: [0, 0, -left], up: [0, 1, 0], viewer: [left, 0, 0] };
}

/** A place plus so much to the right, up, and towards the viewer. */
export function inFrame({ right, up, viewer }: ViewFrame, from: Place, u: number, v: number, w = 0): Place {
  const at = (c: 0 | 1 | 2) => from[c] + u * right[c] + v * up[c] + w * viewer[c];
  return [at(0), at(1), at(2)];
}

import type { Place } from '../../../lib/geometry/pinhole.ts';
import type { ParametricHoof } from '../../../lib/hoof/landmarks/hoofModel.ts';
import { type HoofCamera, hoofScene } from '../../../lib/hoof/landmarks/hoofScene.ts';
import { parametricHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import type { PictureMeasures, PictureScale } from '../../../lib/hoof/landmarks/pictureMeasures.ts';
import type { PictureView, PlacedPoint } from '../../../lib/hoof/landmarks/placedPoint.ts';
import { inFrame, viewFrame } from '../../../lib/hoof/landmarks/viewFrame.ts';
import type { Limb } from '../../../lib/hoof/limbs.ts';

export const board = { kind: 'board', width_mm: 120, height_mm: 120 } as const satisfies PictureScale;
export const bar = { kind: 'bar', length_mm: 100 } as const satisfies PictureScale;
export const views = ['side', 'front', 'rear', 'below'] as const satisfies readonly PictureView[];

/** The foot with every landmark laid into the plane of the view, so that a board there puts all of it right. */
export function flat(hoof: ParametricHoof, view: PictureView): ParametricHoof {
  const frame = viewFrame(view, hoof.limb);
  const deep = (place: Place) => place.reduce((sum, value, c) => sum + value * frame.viewer[c], 0);
  const marks = hoof.landmarks(view);
  const plane = deep(view === 'below' ? [0, 0, 0] : marks.get('ground')![0]);
  const laid = new Map(
    [...marks].map(([code, places]) => [code, places.map((place) => inFrame(frame, place, 0, 0, plane - deep(place)))]),
  );
  return { ...hoof, landmarks: () => laid };
}

/** The points of a picture of a flat foot. */
export function flatPoints(
  view: PictureView,
  limb: Limb,
  camera: HoofCamera = {},
  scale?: PictureScale,
): readonly PlacedPoint[] {
  return hoofScene(flat(parametricHoof(limb), view), view, camera, scale).points;
}

/** Values by name. */
export function valuesOf({ measures }: PictureMeasures): Readonly<Record<string, number>> {
  return Object.fromEntries(measures.map(({ name, value }) => [name, value]));
}

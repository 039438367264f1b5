import { degree } from '../../geometry/degrees.ts';
import { type Pinhole, type Place, pinhole } from '../../geometry/pinhole.ts';
import type { Point } from '../../geometry/points.ts';
import type { ParametricHoof, Tissue } from './hoofModel.ts';
import type { PictureScale } from './pictureMeasures.ts';
import type { PictureView, PlacedPoint } from './placedPoint.ts';
import { inFrame, type ViewFrame, viewFrame } from './viewFrame.ts';
import { scaleLandmarks } from './views.ts';

/** Where an invented picture is taken from; square, from two metres, at 12 megapixels where not given. */
export interface HoofCamera {
  /** Degrees it stands to the left of square (positive) or to the right, above or below, and is rolled. */
  readonly turned?: number;
  readonly raised?: number;
  readonly rolled?: number;
  readonly distance_mm?: number;
  /** How much of the foot's plane the picture's width holds, in mm. */
  readonly field_mm?: number;
  readonly width_px?: number;
  readonly height_px?: number;
}

/** A flat patch of the picture. */
export interface Patch {
  readonly of: Tissue | 'ground' | 'board' | 'bar_scale';
  /** In pixels, right and down. */
  readonly points: readonly Point[];
  /** How much light falls on it, 0 to 1. */
  readonly light: number;
}

export interface HoofScene {
  readonly view: PictureView;
  readonly width_px: number;
  readonly height_px: number;
  readonly focal_px: number;
  /** From the furthest to the nearest. */
  readonly patches: readonly Patch[];
  /** Where every landmark falls in the picture, those of the scale too: what a perfect hand would place. */
  readonly points: readonly PlacedPoint[];
}

/**
 * A picture of an invented foot, through a pinhole camera.
 * @param scale the board or the bar that stands beside the foot in the plane of its view
 * @param photo the name that the points are to bear
 * @throws TypeError where the camera can't stand so
 */
export function hoofScene(
  hoof: ParametricHoof,
  view: PictureView,
  camera: HoofCamera = {},
  scale?: PictureScale,
  photo = `invented-${view}`,
): HoofScene {
  const { turned = 0, raised = 0, rolled = 0, distance_mm = 2000, field_mm = 460 } = camera;
  const { width_px = 4000, height_px = 3000 } = camera;
  const frame = viewFrame(view, hoof.limb);
  const plane = planeCentre(hoof, view);
  const [t, r] = [turned * degree, raised * degree];
  const position = inFrame(
    frame,
    plane,
    -distance_mm * Math.sin(t) * Math.cos(r),
    distance_mm * Math.sin(r),
    distance_mm * Math.cos(t) * Math.cos(r),
  );
  const focal_px = (width_px * distance_mm) / field_mm;
  const centre: Point = [width_px / 2, height_px / 2];
  const lens = pinhole({ position, lookAt: plane, roll: rolled, up: frame.up, focal: focal_px, centre });
  const things = scale ? scalePlaces(scale, hoof, view, frame, plane) : [];
  const landmarks = [...hoof.landmarks(view), ...things.map(([code, place]) => [code, [place]] as const)];
  const points = landmarks.flatMap(([point, places]) =>
    places.map((place): PlacedPoint => {
      const [x_px, y_px] = lens.project(place);
      return { photo, view, point, x_px, y_px };
    }),
  );
  const patches = [
    ...groundPatch(view, frame, plane, lens, distance_mm),
    ...facePatches(hoof, lens, position),
    ...(scale
      ? [
          scalePatch(
            scale,
            things.map(([, place]) => place),
            lens,
            frame,
          ),
        ]
      : []),
  ];
  return { view, width_px, height_px, focal_px, patches, points };
}

/** The middle of the foot in the plane that the view is square to. */
function planeCentre({ size, edges }: ParametricHoof, view: PictureView): Place {
  switch (view) {
    case 'side':
      return [0, 85, -size.foot_length_mm * 0.55];
    case 'front':
      return [0, 85, edges.bearing(1, 'medial')[2]];
    case 'rear':
      return [0, 85, -size.foot_length_mm];
    case 'below':
      return [0, 0, -size.foot_length_mm / 2];
  }
}

/** The scale's landmarks beside the foot, standing on the ground: before the toe, to the right of a foot seen upright. */
function scalePlaces(
  scale: PictureScale,
  { limb, size }: ParametricHoof,
  view: PictureView,
  frame: ViewFrame,
  plane: Place,
): (readonly [string, Place])[] {
  const [width, height] = scale.kind === 'bar' ? [scale.length_mm, 0] : [scale.width_mm, scale.height_mm];
  const leftward = view === 'side' && limb.startsWith('L');
  const clear = view === 'side' ? size.foot_length_mm * 0.55 + 12 : size.foot_width_mm / 2 + 12;
  const left = leftward ? -clear - width : clear;
  const low = view === 'below' ? -height / 2 : -plane[1] + (scale.kind === 'bar' ? 4 : 0);
  const at = (u: number, v: number) => inFrame(frame, plane, u, v);
  const places =
    scale.kind === 'bar'
      ? [at(left, low), at(left + width, low)]
      : [at(left, low), at(left + width, low), at(left + width, low + height), at(left, low + height)];
  return places.map((place, i) => [scaleLandmarks[scale.kind][i].code, place]);
}

function scalePatch({ kind }: PictureScale, places: readonly Place[], lens: Pinhole, frame: ViewFrame): Patch {
  const [from, to] = places;
  const thick = (place: Place, by: number) => inFrame(frame, place, 0, by);
  const corners = kind === 'board' ? places : [thick(from, -4), thick(to, -4), thick(to, 4), thick(from, 4)];
  return {
    of: kind === 'board' ? 'board' : 'bar_scale',
    points: corners.map((place) => lens.project(place)),
    light: 1,
  };
}

/** The ground from near the camera to far behind the foot; a foot held up has none. */
function groundPatch(view: PictureView, frame: ViewFrame, plane: Place, lens: Pinhole, distance: number): Patch[] {
  if (view === 'below') return [];
  const corners = [
    [-1, 0.6],
    [1, 0.6],
    [1, -4],
    [-1, -4],
  ].map(([u, w]) => inFrame(frame, plane, 4 * u * distance, -plane[1], w * distance));
  return [{ of: 'ground', points: corners.map((place) => lens.project(place)), light: 1 }];
}

/** What lies in the plane of the sole: seen from under it only, and then before all else, in the order given. */
const underside: ReadonlySet<Tissue> = new Set(['sole', 'wall', 'bar', 'frog', 'furrow']);

/** The foot's pieces from the furthest to the nearest, the brighter the more they face a light beside the camera. */
function facePatches({ faces }: ParametricHoof, lens: Pinhole, position: Place): Patch[] {
  const seen = faces.map(({ tissue, corners }) => {
    const middle = [0, 1, 2].map((c) => corners.reduce((sum, place) => sum + place[c], 0) / corners.length);
    const sight = middle.map((value, c) => position[c] - value);
    const far = Math.hypot(...sight);
    const facing = Math.abs(normalOf(corners).reduce((sum, value, c) => sum + value * sight[c], 0)) / far;
    return { far, of: tissue, points: corners.map((place) => lens.project(place)), light: 0.55 + 0.45 * facing };
  });
  const upper = seen.filter(({ of }) => !underside.has(of)).sort((a, b) => b.far - a.far);
  const lower = position[1] < 0 ? seen.filter(({ of }) => underside.has(of)) : [];
  return [...upper, ...lower].map(({ of, points, light }) => ({ of, points, light }));
}

/** The direction across a piece, of length 1, by the sum over its edges (Newell), which flat triangles don't upset. */
function normalOf(corners: readonly Place[]): Place {
  let [x, y, z] = [0, 0, 0];
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length];
    x += (a[1] - b[1]) * (a[2] + b[2]);
    y += (a[2] - b[2]) * (a[0] + b[0]);
    z += (a[0] - b[0]) * (a[1] + b[1]);
  });
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}

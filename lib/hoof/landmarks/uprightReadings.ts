import type { Point } from '../../geometry/points.ts';
import { say } from '../../words/say.ts';
import type { Limb } from '../limbs.ts';
import { angleOverGround, between, groundLine, heightOverGround } from './groundLine.ts';
import { isThere, type Located } from './located.ts';
import { pictureSide } from './pictureSide.ts';
import type { Reading } from './reading.ts';

const practice = 'common practice, no source';
const sides = [
  { side: 'medial', other: 'lateral', word: say`Inside` },
  { side: 'lateral', other: 'medial', word: say`Outside` },
] as const;
type UprightView = 'front' | 'rear';

/** What is read off a picture from the front or from behind. */
export const uprightReadings: readonly Reading[] = [
  ...sides.map(
    ({ side, word }): Reading => ({
      view: 'front',
      unit: 'mm',
      name: `${side}_wall_mm`,
      title: say`${word} wall height`,
      figure: (at) => heightOverGround(at.one(`${side}_hairline`), at.one(`${side}_ground`), groundLine(at, 'front')),
      shows: { value: 5, source: 'baus-mediolateral' },
      sided: true,
    }),
  ),
  ...sides.map(
    ({ side, other, word }): Reading => ({
      view: 'front',
      unit: 'deg',
      name: `${side}_wall_angle_deg`,
      title: say`${word} wall slope`,
      figure(at, limb) {
        const [foot, top, opposite] = [at.one(`${side}_ground`), at.one(`${side}_hairline`), at.one(`${other}_ground`)];
        const inwards = isThere(opposite) ? between(foot, opposite) : pictureWay('front', limb, other);
        return angleOverGround([foot, top], groundLine(at, 'front'), inwards);
      },
      shows: { value: 5, source: practice },
      sided: true,
    }),
  ),
  ...sides.map(
    ({ side, word }): Reading => ({
      view: 'rear',
      unit: 'mm',
      name: `${side}_heel_mm`,
      title: say`${word} heel height`,
      figure: (at) =>
        heightOverGround(at.one(`${side}_heel_hairline`), at.one(`${side}_heel_ground`), groundLine(at, 'rear')),
      shows: { value: 5, source: 'ogrady-sheared' },
      sided: true,
    }),
  ),
  {
    view: 'rear',
    unit: 'mm',
    name: 'bulb_width_mm',
    title: say`Distance of the heel bulbs`,
    figure: (at) => ({ kind: 'length', from: at.one('medial_bulb'), to: at.one('lateral_bulb') }),
    shows: { value: 8, source: practice },
  },
  ...(['front', 'rear'] as const).map(
    (view): Reading => ({
      view,
      unit: 'deg',
      name: `limb_axis_${view}_deg`,
      title: say`Limb against the ground, on the inside`,
      figure: (at, limb) => angleOverGround(axis(at), groundLine(at, view), pictureWay(view, limb, 'medial')),
      shows: { value: 3, source: practice },
    }),
  ),
];

function axis(at: Located): readonly Point[] {
  return at.many('limb_axis');
}

function pictureWay(view: UprightView, limb: Limb, side: 'medial' | 'lateral'): Point {
  return pictureSide(view, limb, side) === 'left' ? [-1, 0] : [1, 0];
}

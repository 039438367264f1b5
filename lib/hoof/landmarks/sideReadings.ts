import type { Point } from '../../geometry/points.ts';
import { say } from '../../words/say.ts';
import type { Figure } from './figure.ts';
import { angleOverGround, between, groundLine } from './groundLine.ts';
import { isThere, type Located } from './located.ts';
import type { Reading } from './reading.ts';

const practice = 'common practice, no source';
const angle = { view: 'side', unit: 'deg' } as const;
const length = { view: 'side', unit: 'mm' } as const;

/** What is read off a picture from the side. */
export const sideReadings: readonly Reading[] = [
  {
    ...angle,
    name: 'toe_angle_deg',
    title: say`Toe angle`,
    figure: (at) => openBackwards(at, along(at, 'toe_wall', 'toe_ground', 'toe_hairline')),
    shows: { value: 1.5, source: 'hobbs-2018' },
  },
  {
    ...angle,
    name: 'heel_angle_deg',
    title: say`Heel angle`,
    figure: (at) => openBackwards(at, along(at, 'heel_tubules', 'heel_ground', 'heel_hairline')),
    shows: { value: 5, source: 'turner-balance' },
  },
  {
    ...angle,
    name: 'pastern_angle_deg',
    title: say`Pastern angle`,
    figure: (at) => openBackwards(at, along(at, 'pastern_front', 'pastern_centre', 'fetlock_centre')),
    shows: { value: 3, source: practice },
  },
  {
    ...angle,
    name: 'shoulder_angle_deg',
    title: say`Shoulder angle`,
    figure: (at) => openBackwards(at, [at.one('shoulder_point'), at.one('shoulder_top')]),
    shows: { value: 5, source: practice },
    frontOnly: true,
  },
  {
    ...length,
    name: 'toe_length_mm',
    title: say`Toe length`,
    figure: (at) => ({ kind: 'length', from: at.one('toe_ground'), to: at.one('toe_hairline') }),
    shows: { value: 6.5, source: 'turner-1992' },
  },
  {
    ...length,
    name: 'heel_length_mm',
    title: say`Heel length`,
    figure: (at) => ({ kind: 'length', from: at.one('heel_ground'), to: at.one('heel_hairline') }),
    shows: { value: 5, source: 'ogrady-sheared' },
  },
];

/** What was placed along a line, else its lower and its upper end. */
function along(at: Located, many: string, low: string, high: string): readonly Point[] {
  const placed = at.many(many);
  return placed.length > 0 ? placed : [at.one(low), at.one(high)];
}

/** The angle of a line that rises backwards, from its lower end on, opened backwards over the ground. */
function openBackwards(at: Located, points: readonly Point[]): Figure {
  const [toe, heel] = [at.one('toe_ground'), at.one('heel_ground')];
  const footKnown = isThere(toe) && isThere(heel);
  // Without the foot, from the line itself: hardly any wall or pastern leans forward.
  const backwards = footKnown ? between(toe, heel) : between(lowest(points), highest(points));
  return angleOverGround(points, groundLine(at, 'side'), backwards);
}

function lowest(points: readonly Point[]): Point {
  return points.reduce((low, point) => (point[1] < low[1] ? point : low));
}

function highest(points: readonly Point[]): Point {
  return points.reduce((high, point) => (point[1] > high[1] ? point : high));
}

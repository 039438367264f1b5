import { nearestOnLine } from '../../geometry/distancePointLine.ts';
import { fitEllipse } from '../../geometry/fitEllipse.ts';
import { isFitFailure } from '../../geometry/fitFailure.ts';
import { intersection } from '../../geometry/intersection.ts';
import { type Line, lineThrough } from '../../geometry/line.ts';
import { lineAngle } from '../../geometry/lineAngle.ts';
import { mirrorSymmetry } from '../../geometry/mirrorSymmetry.ts';
import { centreOf, type Point } from '../../geometry/points.ts';
import { polygonArea } from '../../geometry/polygonArea.ts';
import { polygonPerimeter } from '../../geometry/polygonPerimeter.ts';
import { resamplePath } from '../../geometry/resamplePath.ts';
import { roundness } from '../../geometry/roundness.ts';
import { smoothPath } from '../../geometry/smoothPath.ts';
import { widestWidth } from '../../geometry/widestWidth.ts';
import { say } from '../../words/say.ts';
import type { Figure } from './figure.ts';
import { lineOf } from './groundLine.ts';
import { isThere, type Located } from './located.ts';
import type { Reading } from './reading.ts';

const practice = 'common practice, no source';
const length = { view: 'below', unit: 'mm' } as const;
/** Into how many places an outline is cut at equal steps where how closely it was traced is not to matter. */
const steps = 41;

/** What is read off a picture from below. */
export const soleReadings: readonly Reading[] = [
  {
    ...length,
    name: 'foot_width_mm',
    title: say`Foot width`,
    figure(at) {
      const [inside, outside] = [at.one('medial_widest'), at.one('lateral_widest')];
      if (isThere(inside) && isThere(outside)) return { kind: 'length', from: inside, to: outside };
      const { direction } = middle(at);
      const { left, right } = widestWidth(outline(at), lineAngle(middle(at)));
      const across: Line = { point: right, direction: [-direction[1], direction[0]] };
      return { kind: 'length', from: right, to: nearestOnLine(left, across) };
    },
    shows: { value: 5, source: practice },
  },
  {
    ...length,
    name: 'foot_length_mm',
    title: say`Foot length`,
    figure: (at) => ({
      kind: 'length',
      from: toe(at),
      to: intersection({ ...middle(at), point: toe(at) }, heelLine(at)),
    }),
    shows: { value: 5, source: practice },
  },
  {
    ...length,
    name: 'heel_width_mm',
    title: say`Heel width`,
    figure(at) {
      const [from, to] = heels(at);
      return { kind: 'length', from, to };
    },
    shows: { value: 5, source: practice },
  },
  {
    ...length,
    name: 'frog_width_mm',
    title: say`Frog width`,
    figure: (at) => ({ kind: 'length', from: at.one('medial_frog'), to: at.one('lateral_frog') }),
    shows: { value: 5, source: practice },
  },
  {
    ...length,
    name: 'frog_length_mm',
    title: say`Frog length`,
    figure(at) {
      const tip = at.one('frog_tip');
      return {
        kind: 'length',
        from: tip,
        to: nearestOnLine(tip, lineThrough(at.one('medial_frog'), at.one('lateral_frog'))),
      };
    },
    shows: { value: 5, source: practice },
  },
  {
    view: 'below',
    unit: 'mm2',
    name: 'outline_area_mm2',
    title: say`Area within the outline`,
    figure: (at) => ofOutline(at, polygonArea),
    shows: { value: 500, source: practice },
  },
  {
    ...length,
    name: 'outline_perimeter_mm',
    title: say`Length of the outline`,
    figure: (at) => ofOutline(at, polygonPerimeter),
    shows: { value: 10, source: practice },
  },
  {
    view: 'below',
    unit: '1',
    name: 'outline_roundness',
    title: say`Roundness of the outline`,
    figure: (at) => ofOutline(at, roundness),
    shows: { value: 0.05, source: practice },
  },
  {
    view: 'below',
    unit: '1',
    name: 'ellipse_ratio',
    title: say`Width to length of the ellipse nearest to the outline`,
    figure: (at) => ofOutline(at, (points) => ellipseRatio(resamplePath(points, steps), middle(at))),
    shows: { value: 0.05, source: practice },
  },
  {
    ...length,
    name: 'outline_asymmetry_mm',
    title: say`How far left and right lie from their common mean`,
    figure: (at) => ofOutline(at, asymmetry),
    shows: { value: 3, source: practice },
  },
];

/** Outlines by what they were read from: several measures rest on one. */
const outlines = new WeakMap<Located, readonly Point[]>();

/** The outline as it was traced from heel to heel, rounded between its points. */
function outline(at: Located): readonly Point[] {
  const known = outlines.get(at);
  if (known) return known;
  const rounded = smoothPath(at.many('outline', 10), 6);
  outlines.set(at, rounded);
  return rounded;
}

function ofOutline(at: Located, value: (points: readonly Point[]) => number): Figure {
  const points = outline(at);
  return { kind: 'outline', points, value: points.length === 0 ? Number.NaN : value(points) };
}

/** The two heel buttresses: as placed, else the ends of the outline. */
function heels(at: Located): readonly [Point, Point] {
  const placed = [at.one('medial_heel'), at.one('lateral_heel')] as const;
  if (placed.every(isThere)) return placed;
  const traced = at.many('outline', 10);
  return traced.length === 0 ? placed : [traced[0], traced[traced.length - 1]];
}

function heelLine(at: Located): Line {
  const [from, to] = heels(at);
  return lineThrough(from, to);
}

/** Mid-toe: as placed, else what of the outline is furthest from the heels. */
function toe(at: Located): Point {
  const placed = at.one('toe');
  if (isThere(placed)) return placed;
  const [from, to] = heels(at);
  const { left, right } = widestWidth([...outline(at), from, to], lineAngle(lineThrough(from, to)));
  const centre = centreOf([from, to]);
  const far = (point: Point) => Math.hypot(point[0] - centre[0], point[1] - centre[1]);
  return far(left) > far(right) ? left : right;
}

/** The middle line: as placed, else from the toe to the middle between the heels. */
function middle(at: Located): Line {
  const placed = at.many('centre_line');
  return placed.length > 0 ? lineOf(placed) : lineThrough(toe(at), centreOf(heels(at)));
}

/** The ellipse's extent across the middle line over that along it. */
function ellipseRatio(points: readonly Point[], { direction }: Line): number {
  const fit = fitEllipse(points);
  if (isFitFailure(fit)) return Number.NaN;
  const turn = (fit.turn * Math.PI) / 180;
  const extent = ([x, y]: Point) =>
    Math.hypot(
      fit.semiMajor * (x * Math.cos(turn) + y * Math.sin(turn)),
      fit.semiMinor * (y * Math.cos(turn) - x * Math.sin(turn)),
    );
  return extent([-direction[1], direction[0]]) / extent(direction);
}

/** The outline from heel to heel laid over its mirror image: the root mean square distance from the mean of both. */
function asymmetry(points: readonly Point[]): number {
  const fit = mirrorSymmetry(
    resamplePath(points, steps),
    Array.from({ length: steps }, (_, i) => steps - 1 - i),
  );
  return isFitFailure(fit) ? Number.NaN : fit.rmsd;
}

import { degree } from '../../geometry/degrees.ts';
import { fitEllipse } from '../../geometry/fitEllipse.ts';
import { isFitFailure } from '../../geometry/fitFailure.ts';
import type { Place } from '../../geometry/pinhole.ts';
import type { Point } from '../../geometry/points.ts';
import { polygonArea } from '../../geometry/polygonArea.ts';
import { polygonPerimeter } from '../../geometry/polygonPerimeter.ts';
import { resamplePath } from '../../geometry/resamplePath.ts';
import { roundness } from '../../geometry/roundness.ts';
import { type Limb, sideOf } from '../limbs.ts';
import type { HoofEdges, HoofSize, ParametricHoof } from './hoofModel.ts';
import { limbRings, pasternFront, pasternMiddle } from './limbRings.ts';
import type { PictureView } from './placedPoint.ts';

const sides = ['medial', 'lateral'] as const;

/** Where the landmarks of an invented foot lie, and what it truly measures. */
export function hoofLandmarks(
  limb: Limb,
  size: HoofSize,
  edges: HoofEdges,
): Pick<ParametricHoof, 'truth' | 'landmarks'> {
  const outer = sideOf(limb) === 'left' ? 1 : -1;
  const length = size.foot_length_mm;
  const one = (place: Place): readonly Place[] => [place];
  const bothSides = (at: (side: 'medial' | 'lateral') => Readonly<Record<string, Place>>) =>
    sides.flatMap((side) => Object.entries(at(side)).map(([name, place]) => [`${side}_${name}`, one(place)] as const));
  const [wallFoot, wallTop] = [edges.bearing(0, 'lateral'), edges.hairline(0, 'lateral')];
  const [heelFoot, heelTop] = [edges.bearing(2, 'lateral'), edges.hairline(2, 'lateral')];
  const frog = frogCorners(size);
  const rings = limbRings(size);
  const axis: readonly Place[] = [rings[5].centre, rings[2].centre];
  const outline = tracedOutline(edges, 12);
  const views: Readonly<Record<PictureView, ReadonlyMap<string, readonly Place[]>>> = {
    side: new Map<string, readonly Place[]>([
      ['ground', [-1, 1].map((end): Place => [0, 0, -length / 2 - end * 160 * outer])],
      ['toe_ground', one(wallFoot)],
      ['toe_hairline', one(wallTop)],
      ['toe_wall', [0.2, 0.5, 0.8].map((share) => mixed(wallFoot, wallTop, share))],
      ['heel_ground', one(heelFoot)],
      ['heel_hairline', one(heelTop)],
      ['heel_tubules', [0.15, 0.5, 0.85].map((share) => mixed(heelFoot, heelTop, share))],
      ['pastern_front', [14, 40, 66].map((far) => pasternFront(size, far))],
      ['pastern_centre', one(pasternMiddle(size, 60))],
      ['fetlock_centre', one(rings[3].centre)],
    ]),
    front: new Map([
      ['ground', [-160, 160].map((x): Place => [x, 0, edges.bearing(1, 'medial')[2]])],
      ...bothSides((side) => ({ hairline: edges.hairline(1, side), ground: edges.bearing(1, side) })),
      ['limb_axis', axis],
    ]),
    rear: new Map([
      ['ground', [160, -160].map((x): Place => [x, 0, -length])],
      ...bothSides((side) => ({
        heel_hairline: edges.hairline(2, side),
        heel_ground: edges.bearing(2, side),
        bulb: bulbEnd(edges, side),
      })),
      ['limb_axis', axis],
    ]),
    below: new Map([
      ['toe', one(wallFoot)],
      ...bothSides((side) => ({
        heel: edges.bearing(2, side),
        widest: edges.bearing(1, side),
        frog: frog.corner(side === 'lateral' ? outer : -outer),
      })),
      ['frog_tip', one(frog.tip)],
      ['centre_line', [mixed(frog.tip, frog.corner(0), 0.8), mixed(frog.tip, wallFoot, 0.9)]],
      ['outline', outline],
    ]),
  };
  return { landmarks: (view) => views[view], truth: truthOf(size, edges) };
}

function mixed(a: Place, b: Place, share: number): Place {
  const at = (c: 0 | 1 | 2) => a[c] + share * (b[c] - a[c]);
  return [at(0), at(1), at(2)];
}

/** The frog's tip and its base corners; between them (0) the middle of its base. */
export function frogCorners(size: HoofSize): { readonly tip: Place; corner(sign: number): Place } {
  const base = -size.foot_length_mm + 2;
  return {
    tip: [0, 0, base + size.frog_length_mm],
    corner: (sign) => [(sign * size.frog_width_mm) / 2, 0, base],
  };
}

/** A heel bulb as an ellipsoid: its middle and its three half axes. */
export function bulbOf(edges: HoofEdges, side: 'medial' | 'lateral'): { readonly centre: Place; readonly axes: Place } {
  const [x, y, z] = edges.hairline(2, side);
  return { centre: [0.52 * x, 0.54 * y, z + 14], axes: [0.55 * Math.abs(x), 0.54 * y, 20] };
}

/** The rearmost point of a heel bulb. */
function bulbEnd(edges: HoofEdges, side: 'medial' | 'lateral'): Place {
  const { centre, axes } = bulbOf(edges, side);
  return [centre[0], centre[1], centre[2] - axes[2]];
}

/** The bearing edge from the inside heel by the toe to the outside heel, in so many steps a side. */
export function tracedOutline(edges: HoofEdges, steps: number): Place[] {
  const shares = Array.from({ length: steps }, (_, i) => (2 * (i + 1)) / steps);
  return [
    ...[...shares].reverse().map((t) => edges.bearing(t, 'medial')),
    edges.bearing(0, 'medial'),
    ...shares.map((t) => edges.bearing(t, 'lateral')),
  ];
}

function truthOf(size: HoofSize, edges: HoofEdges): Readonly<Record<string, number>> {
  const edge = tracedOutline(edges, 400).map(([x, , z]): Point => [x, z]);
  const [inside, outside] = sides.map((side) => bulbEnd(edges, side));
  const ellipse = fitEllipse(resamplePath(edge, 41));
  return {
    ...size,
    lateral_heel_mm: size.heel_length_mm * Math.sin(size.heel_angle_deg * degree),
    bulb_width_mm: Math.hypot(inside[0] - outside[0], inside[1] - outside[1]),
    limb_axis_front_deg: 90,
    limb_axis_rear_deg: 90,
    outline_area_mm2: polygonArea(edge),
    outline_perimeter_mm: polygonPerimeter(edge),
    outline_roundness: roundness(edge),
    ellipse_ratio: isFitFailure(ellipse) ? Number.NaN : ellipseRatio(ellipse),
    outline_asymmetry_mm: 0,
  };
}

/** Across over along: the foot is alike on both sides, so the ellipse lies along or across the middle line. */
function ellipseRatio({ semiMajor, semiMinor, turn }: { semiMajor: number; semiMinor: number; turn: number }): number {
  return Math.abs(turn - 90) < 45 ? semiMinor / semiMajor : semiMajor / semiMinor;
}

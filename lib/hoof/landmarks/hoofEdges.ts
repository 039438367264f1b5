import { degree } from '../../geometry/degrees.ts';
import type { Place } from '../../geometry/pinhole.ts';
import { type Limb, sideOf } from '../limbs.ts';
import type { HoofEdges, HoofSize } from './hoofModel.ts';

/** Two curves over the sides of the foot, a quarter of an ellipse before the widest part and a gentler one behind it. */
export function hoofEdges(limb: Limb, size: HoofSize): HoofEdges {
  const { foot_length_mm: length, toe_length_mm: toe, toe_angle_deg, heel_angle_deg, heel_length_mm: heel } = size;
  const widest = -length / 2;
  const outer = sideOf(limb) === 'left' ? 1 : -1;
  const sign = (side: 'medial' | 'lateral') => (side === 'lateral' ? outer : -outer);
  const toeTop = -toe * Math.cos(toe_angle_deg * degree);
  return {
    bearing: (t, side) =>
      along(t, sign(side), [size.foot_width_mm / 2, size.heel_width_mm / 2], [0, widest, -length], [0, 0, 0]),
    hairline(t, side) {
      const [height, slope] =
        side === 'medial'
          ? [size.medial_wall_mm, size.medial_wall_angle_deg]
          : [size.lateral_wall_mm, size.lateral_wall_angle_deg];
      const atHeel = side === 'medial' ? size.medial_heel_mm : heel * Math.sin(heel_angle_deg * degree);
      const heelTop = -length - atHeel / Math.tan(heel_angle_deg * degree);
      const half = size.foot_width_mm / 2 - height / Math.tan(slope * degree);
      return along(
        t,
        sign(side),
        [half, 0.43 * size.heel_width_mm],
        [toeTop, (toeTop + heelTop) / 2, heelTop],
        [toe * Math.sin(toe_angle_deg * degree), height, atHeel],
      );
    },
  };
}

/** A place on an edge: half widths at the widest part and the heel; how far forward and how high toe, quarter and heel lie. */
function along(
  t: number,
  sign: number,
  [half, heel]: readonly [number, number],
  [z0, z1, z2]: Place,
  [y0, y1, y2]: Place,
): Place {
  const ease = (from: number, to: number, share: number) => from + ((to - from) * (1 - Math.cos(Math.PI * share))) / 2;
  if (t <= 1) {
    const angle = (Math.PI / 2) * t;
    return [sign * half * Math.sin(angle), ease(y0, y1, t), z1 + (z0 - z1) * Math.cos(angle)];
  }
  const share = t - 1;
  const x = half - (half - heel) * (1 - Math.cos((Math.PI / 2) * share));
  return [sign * x, ease(y1, y2, share), z1 + (z2 - z1) * share];
}

import { degree } from '../../geometry/degrees.ts';
import type { Place } from '../../geometry/pinhole.ts';
import type { HoofSize } from './hoofModel.ts';

/** A cut across the limb: an ellipse about a centre, half as wide as `width` across and `deep` long before and behind. */
export interface Ring {
  readonly centre: Place;
  /** The direction of its front. */
  readonly front: Place;
  readonly width: number;
  readonly deep: number;
}

/** How thick the pastern is from its front to its middle, in mm. */
const half = 27;

/** The place so far up the front line of the pastern from the hairline, in mm. */
export function pasternFront({ toe_angle_deg, toe_length_mm, pastern_angle_deg }: HoofSize, far: number): Place {
  const [toe, pastern] = [toe_angle_deg * degree, pastern_angle_deg * degree];
  return [
    0,
    toe_length_mm * Math.sin(toe) + far * Math.sin(pastern),
    -toe_length_mm * Math.cos(toe) - far * Math.cos(pastern),
  ];
}

/** The pastern from above the hairline, the fetlock (the fourth), and the cannon, upright. */
export function limbRings(size: HoofSize): readonly Ring[] {
  const pastern = size.pastern_angle_deg * degree;
  const front: Place = [0, Math.cos(pastern), Math.sin(pastern)];
  const inside = (far: number): Place => {
    const [, y, z] = pasternFront(size, far);
    return [0, y - half * front[1], z - half * front[2]];
  };
  const along = [14, 40, 66].map((far): Ring => ({ centre: inside(far), front, width: 31, deep: half }));
  const fetlock = inside(100);
  const up = [34, 70, 150].map(
    (by, i): Ring => ({
      centre: [0, fetlock[1] + by, fetlock[2] + 4],
      front: [0, 0, 1],
      width: [27, 22, 22][i],
      deep: [28, 24, 24][i],
    }),
  );
  return [...along, { centre: fetlock, front: [0, 0.35, 0.94], width: 36, deep: 35 }, ...up];
}

/** A place on a ring: 0 in front, 180 behind, positive to the horse's left. */
export function onRing({ centre, front, width, deep }: Ring, angle_deg: number): Place {
  const [across, fore] = [width * Math.sin(angle_deg * degree), deep * Math.cos(angle_deg * degree)];
  return [centre[0] + across, centre[1] + fore * front[1], centre[2] + fore * front[2]];
}

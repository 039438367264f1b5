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

/** How thick the pastern is from its front to its middle, in mm; thicker just above the heels. */
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

/** The place half way between front and back so far up the pastern; higher up than the hollow over the heels. */
export function pasternMiddle(size: HoofSize, far: number, deep = half): Place {
  const [, y, z] = pasternFront(size, far);
  const [, up, forward] = acrossPastern(size);
  return [0, y - deep * up, z - deep * forward];
}

/** At right angles to the pastern, forward. */
function acrossPastern({ pastern_angle_deg }: HoofSize): Place {
  const pastern = pastern_angle_deg * degree;
  return [0, Math.cos(pastern), Math.sin(pastern)];
}

/** The pastern from above the hairline, the fetlock (the fourth), and the cannon, upright. */
export function limbRings(size: HoofSize): readonly Ring[] {
  const front = acrossPastern(size);
  const along = [14, 34, 66].map((far, i): Ring => {
    const deep = [43, 31, half][i];
    return { centre: pasternMiddle(size, far, deep), front, width: [34, 31, 31][i], deep };
  });
  const fetlock = pasternMiddle(size, 100);
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

import { degree } from '../../geometry/degrees.ts';
import { fixed } from '../../words/fixed.ts';
import { say } from '../../words/say.ts';
import type { Squareness } from './pictureMeasures.ts';
import type { PictureView } from './placedPoint.ts';
import type { Sight } from './sight.ts';

/** Further off square than this a picture isn't used: what stands before or behind the plane moves too far. No source. */
export const mostOff_deg = 15;

/** How far off square is still called square. Common practice, no source. */
const nearlySquare_deg = 5;

/** What the sight says in words, and whether the picture is to be used. */
export function squareness({ slope: [across, down] }: Sight, view: PictureView): Squareness {
  const turn_deg = Math.atan(across) / degree;
  const tilt_deg = -Math.atan(down) / degree;
  const off_deg = Math.atan(Math.hypot(across, down)) / degree;
  const usable = off_deg <= mostOff_deg;
  const ways = [
    Math.abs(turn_deg) < 1
      ? ''
      : say`${fixed(Math.abs(turn_deg), 0)}° too far to the ${turn_deg > 0 ? say`left` : say`right`}`,
    Math.abs(tilt_deg) < 1 ? '' : say`${fixed(Math.abs(tilt_deg), 0)}° too ${high(tilt_deg > 0, view)}`,
  ].filter((way) => way !== '');
  const place =
    ways.length === 0 ? say`The camera stood square to the board` : say`The camera stood ${ways.join(say` and `)}`;
  const words =
    off_deg <= nearlySquare_deg
      ? say`${place}: square enough`
      : usable
        ? say`${place}. What lies in the plane of the board is put right; what stands before or behind it adds error`
        : say`${place}: too far off square to measure from. ${remedyOf({ turn_deg, tilt_deg }, view)}`;
  return { tilt_deg, turn_deg, off_deg, words, usable };
}

/** What to do about a camera that was off square. */
export function remedyOf({ turn_deg, tilt_deg }: Pick<Squareness, 'turn_deg' | 'tilt_deg'>, view: PictureView): string {
  if (view === 'below') return say`Hold the camera straight over the sole, then take the picture again`;
  if (Math.abs(turn_deg) >= Math.abs(tilt_deg))
    return say`Step to the ${turn_deg > 0 ? say`right` : say`left`} until you look square at the foot, then take the picture again`;
  return say`Hold the camera at the height of the foot, then take the picture again`;
}

function high(above: boolean, view: PictureView): string {
  if (view === 'below') return say`far towards the ${above ? say`top` : say`bottom`} of the picture`;
  return above ? say`high` : say`low`;
}

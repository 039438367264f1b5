import { formatQuantity } from '../../sheet/display.ts';
import { fixed } from '../../words/fixed.ts';
import { say } from '../../words/say.ts';
import { type Limb, limbName } from '../limbs.ts';
import type { PictureOptions, Refusal, Squareness } from './pictureMeasures.ts';
import type { Reading } from './reading.ts';
import { mostOff_deg, remedyOf } from './squareness.ts';

/** What of the picture as a whole bears on whether it can be measured from. */
export interface PictureState {
  readonly fault: string | undefined;
  readonly sized: boolean;
  readonly square: Squareness | undefined;
  readonly swapped: boolean;
}

/** Why, and what to do about it. */
type Why = Pick<Refusal, 'reason' | 'remedy'>;

/** Why the picture as a whole doesn't give this measure, if so. */
export function refusalByPicture(
  { unit, sided, view }: Reading,
  limb: Limb,
  { fault, sized, square, swapped }: PictureState,
): Why | undefined {
  const angle = unit === 'deg' || unit === '1';
  if (!sized && !angle)
    return {
      reason: fault ?? say`Nothing in the picture has a known size`,
      remedy: say`Put a bar of known length or a board with four corners in the plane of the foot, and place its points`,
    };
  if (square && !square.usable)
    return {
      reason: say`The camera was ${fixed(square.off_deg, 1)}° off square, more than ${mostOff_deg}°`,
      remedy: remedyOf(square, view),
    };
  if (sided && swapped)
    return {
      reason: say`Inside and outside lie the wrong way round for the ${limbName(limb)}`,
      remedy: say`Check which foot this is and that the picture is not mirrored, or place the inside points on the inside`,
    };
  return undefined;
}

/** Why its error forbids this measure, if so. */
export function refusalByError(
  { unit, shows }: Reading,
  error: number,
  remedy: string,
  { units = { length: 'mm', mass: 'kg' } }: PictureOptions,
): Why | undefined {
  if (error <= shows.value) return undefined;
  const words = (value: number) => formatQuantity(value, unit, units);
  const reason = Number.isNaN(error)
    ? say`Its error could not be worked out`
    : say`Its error, ${words(error)}, is larger than the ${words(shows.value)} that it should show`;
  return { reason, remedy };
}

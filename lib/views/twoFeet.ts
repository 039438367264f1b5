import { limbName } from '../hoof/limbs.ts';
import { formatQuantity } from '../sheet/display.ts';
import { say } from '../words/say.ts';
import { type DrawingOptions, isKnown, settled } from './drawingOptions.ts';
import { overlaid, timeLooks } from './footOverTime.ts';
import type { FootShape } from './footShape.ts';
import type { SvgNode } from './svg.ts';

/**
 * A foot and its partner laid over each other at one scale, the partner turned over where it is of the other side, so
 * that what is unlike stands out; under it the number in question of each.
 * @param foot     filled; mm and degrees
 * @param partner  dashed
 * @param part     the toe angle is seen from the side, width and length as prints
 * @returns an `svg` whose description names both feet
 * @example twoFeet(leftFore, rightFore, 'toeAngle')
 */
export function twoFeet(
  foot: FootShape,
  partner: FootShape,
  part: 'toeAngle' | 'width' | 'length',
  options: DrawingOptions = {},
): SvgNode {
  const { units } = settled(options);
  const [unit, view] = part === 'toeAngle' ? (['deg', 'side'] as const) : (['mm', 'below'] as const);
  const feet = [foot, partner];
  const said = feet.map((one, index) => {
    const value = one[part];
    const shown = isKnown(value) ? formatQuantity(value, unit, units) : say`not measured`;
    return `${timeLooks[index].word}: ${limbName(one.limb)} ${shown}`;
  });
  const turned = feet.map((shape) => ({ shape: { ...shape, limb: foot.limb }, when: limbName(shape.limb) }));
  return overlaid(turned, view, feet.map(({ limb }) => limbName(limb)).join(say` and `), said, options);
}

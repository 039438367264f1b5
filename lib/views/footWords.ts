import { limbName } from '../hoof/limbs.ts';
import { type DisplayUnits, formatQuantity } from '../sheet/display.ts';
import { isKnown } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';

type Part = Exclude<keyof FootShape, 'limb'>;

const names: Readonly<Record<Part, string>> = {
  toeAngle: 'toe angle',
  heelAngle: 'heel angle',
  pasternAngle: 'pastern angle',
  toeLength: 'toe length',
  heelLength: 'heel length',
  medialWall: 'inside wall',
  lateralWall: 'outside wall',
  medialWallAngle: 'inside wall slope',
  lateralWallAngle: 'outside wall slope',
  medialHeel: 'inside heel',
  lateralHeel: 'outside heel',
  width: 'width',
  length: 'length',
  frogWidth: 'frog width',
  frogLength: 'frog length',
  heelWidth: 'heel width',
};

/**
 * A drawing of a foot in words, for those who don't see it.
 * @param seen   from where: `from below`
 * @param parts  which of its numbers the drawing shows
 * @returns name, `left fore from below`; description, every number with its unit, then what was not measured
 */
export function footWords(
  foot: FootShape,
  seen: string,
  parts: readonly Part[],
  units: DisplayUnits,
): { readonly name: string; readonly description: string } {
  const unit = (part: Part) => (part.endsWith('Angle') ? 'deg' : 'mm');
  const known = parts.filter((part) => isKnown(foot[part]));
  const missing = parts.filter((part) => !isKnown(foot[part]));
  const sentences = [
    known.map((part) => `${names[part]} ${formatQuantity(foot[part]!, unit(part), units)}`).join(', '),
    missing.length === 0 ? '' : `not measured: ${missing.map((part) => names[part]).join(', ')}`,
  ];
  return { name: `${limbName(foot.limb)} ${seen}`, description: sentences.filter((text) => text !== '').join('; ') };
}

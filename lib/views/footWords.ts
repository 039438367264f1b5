import { limbName } from '../hoof/limbs.ts';
import { type DisplayUnits, formatQuantity } from '../sheet/display.ts';
import { say } from '../words/say.ts';
import { isKnown } from './drawingOptions.ts';
import type { FootShape } from './footShape.ts';

type Part = Exclude<keyof FootShape, 'limb'>;

const names: Readonly<Record<Part, string>> = {
  toeAngle: say`toe angle`,
  heelAngle: say`heel angle`,
  pasternAngle: say`pastern angle`,
  toeLength: say`toe length`,
  heelLength: say`heel length`,
  medialWall: say`inside wall`,
  lateralWall: say`outside wall`,
  medialWallAngle: say`inside wall slope`,
  lateralWallAngle: say`outside wall slope`,
  medialHeel: say`inside heel`,
  lateralHeel: say`outside heel`,
  width: say`width`,
  length: say`length`,
  frogWidth: say`frog width`,
  frogLength: say`frog length`,
  heelWidth: say`heel width`,
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
    missing.length === 0 ? '' : say`not measured: ${missing.map((part) => names[part]).join(', ')}`,
  ];
  return { name: `${limbName(foot.limb)} ${seen}`, description: sentences.filter((text) => text !== '').join('; ') };
}

import { parseUnit } from '../sheet/dimension.ts';
import { unitRow } from '../sheet/units.ts';

const signs: Readonly<Record<string, string>> = {
  º: '°',
  '˚': '°',
  '”': '"',
  '“': '"',
  '″': '"',
  "''": '"',
  '’’': '"',
};

/**
 * The UCUM code of a unit as people write it.
 * @returns `undefined` for what is no unit
 * @example unitCode('Inches') // '[in_i]'
 */
export function unitCode(word: string): string | undefined {
  const trimmed = word.trim();
  const said = Object.hasOwn(signs, trimmed) ? signs[trimmed] : trimmed.replace(/\.$/, '');
  if (said === '' || said === '1') return undefined;
  const lower = said.toLowerCase();
  // With an s at its end a word is a plural, and one letter or two are another unit: C, then cs.
  return (unitRow(said) ?? unitRow(lower) ?? (lower.length > 2 ? unitRow(`${lower}s`) : undefined))?.code;
}

const suffix = /_(mm2?|cm2?|in|deg|kg|lb|percent)(?:_per_(mm2?|cm2?|kg|day|week|month|year))?$/;

/**
 * The unit that a column's name ends in, or that stands in brackets at its end.
 * @returns a UCUM code; `'1'` where the name ends in no unit
 * @example unitOfName('sole_load_kg_per_cm2') // 'kg/cm2'
 */
export function unitOfName(name: string): string {
  const bracket = /(?:\(([^()[\]]*)\)|\[([^()[\]]*)\])\s*$/.exec(name);
  if (bracket) return unitCode(bracket[1] ?? bracket[2]) ?? '1';
  const [, above, below] = suffix.exec(name) ?? [];
  if (above === undefined) return '1';
  return parseUnit(below === undefined ? above : `${above}/${below}`).code;
}

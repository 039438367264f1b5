import { type Limb, parseLimb } from '../../hoof/limbs.ts';
import { unguard } from '../guard.ts';
import type { CellGrid } from './cellGrid.ts';

/**
 * The headings in a row of a file. Where limbs stand in the row above, each over the columns to its right, they are part
 * of the headings below them.
 */
export function fileHeadings(grid: CellGrid, row: number): string[] {
  const own = (grid.rows[row] ?? []).map((text) => unguard(text).trim());
  if (!limbsAbove(grid, row)) return own;
  const above = grid.rows[row - 1];
  let limb = '';
  return own.map((heading, c) => {
    const over = (above[c] ?? '').trim();
    if (over !== '') limb = parseLimb(over) ? over : '';
    return limb === '' || heading === '' ? heading : `${limb} ${heading}`;
  });
}

/** Whether the row above the headings says of which limb the columns below it are. */
export function limbsAbove({ rows }: CellGrid, row: number): boolean {
  return (rows[row - 1] ?? []).some((text) => parseLimb(text));
}

/**
 * The limb that a heading names, and the rest of it.
 * @returns `undefined` where it names none, nothing besides, or two
 * @example limbInHeading('LF toe angle (deg)') // { limb: 'LF', rest: 'toe angle (deg)' }
 */
export function limbInHeading(written: string): { limb: Limb; rest: string } | undefined {
  const heading = written.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2');
  const words = [...heading.matchAll(/\p{L}+/gu)];
  // The longest first: in “left fore toe angle” neither “left” nor “fore” stands for a limb.
  for (const count of [3, 2, 1])
    for (const first of atEndsFirst(words.length - count)) {
      const start = words[first].index;
      const last = words[first + count - 1];
      const end = last.index + last[0].length;
      const said = heading.slice(start, end);
      const limb = parseLimb(said);
      if (!limb || (start > 0 && end < heading.length && isSmallWord(said, heading))) continue;
      const rest = [trimmed(heading.slice(0, start)), trimmed(heading.slice(end))].filter((part) => part !== '');
      // “HL (LF)” is more likely the heel length of one than two limbs.
      return parseLimb(rest.join(' ')) ? undefined : { limb, rest: rest.join(' ') };
    }
  return undefined;
}

/** Places from 0 to `last`, both ends before those between; none where nothing would be left of the heading. */
const atEndsFirst = (last: number): number[] =>
  last < 1 ? [] : [0, last, ...Array.from({ length: last - 1 }, (_, i) => i + 1)];

/** “of” and “or” between other words are a limb only where they stand out in capitals: “angle of toe”, “toe angle OF, mm”. */
function isSmallWord(said: string, heading: string): boolean {
  return /^(?:of|or|nr)$/i.test(said) && (said !== said.toUpperCase() || heading === heading.toUpperCase());
}

/** Without the signs that parted it from the limb. */
const trimmed = (text: string) => text.replace(/^[\s_:;.,/)\]–-]+|[\s_:;.,/([–-]+$/g, '');

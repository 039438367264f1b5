import { type Limb, parseLimb } from '../../hoof/limbs.ts';
import { unguard } from '../guard.ts';
import type { CellGrid } from './cellGrid.ts';

/**
 * The headings in a row of a file. Where limbs stand in the row above, each over the columns to its right, they are part
 * of the headings below them.
 */
export function fileHeadings({ rows }: CellGrid, row: number): string[] {
  const above = rows[row - 1] ?? [];
  const own = (rows[row] ?? []).map((text) => unguard(text).trim());
  if (!above.some((text) => parseLimb(text))) return own;
  let limb = '';
  return own.map((heading, c) => {
    const over = (above[c] ?? '').trim();
    if (over !== '') limb = parseLimb(over) ? over : '';
    return limb === '' || heading === '' ? heading : `${limb} ${heading}`;
  });
}

/**
 * The limb that a heading begins or ends with, and the rest of it.
 * @example limbInHeading('LF toe angle (deg)') // { limb: 'LF', rest: 'toe angle (deg)' }
 */
export function limbInHeading(heading: string): { limb: Limb; rest: string } | undefined {
  const words = [...heading.matchAll(/[A-Za-z]+/g)];
  // The longest first: in “left fore toe angle” neither “left” nor “fore” stands for a limb.
  for (const count of [3, 2, 1]) {
    if (words.length <= count) continue;
    const end = words[count - 1].index + words[count - 1][0].length;
    const limb = parseLimb(heading.slice(0, end));
    if (limb) return { limb, rest: trimmed(heading.slice(end)) };
    const last = words[words.length - count];
    const ending = parseLimb(heading.slice(last.index));
    if (ending) return { limb: ending, rest: trimmed(heading.slice(0, last.index)) };
  }
  return undefined;
}

/** Without the signs that parted it from the limb. */
const trimmed = (text: string) => text.replace(/^[\s_:;.,/)\]-]+|[\s_:;.,/([-]+$/g, '');

import { matchHeading } from '../headings.ts';
import type { TableRead } from '../readTable.ts';
import { schemas } from '../schemas.ts';
import { limbInHeading } from './fileHeadings.ts';

/**
 * Whether a file that was read leaves open what it holds: no table of ours, one that lacks a column it needs, one that
 * has columns for each limb, or headings that stand twice, as below a row of limbs.
 */
export function needsGuide({ schema, problems, headings }: TableRead): boolean {
  const open = ['missing-column', 'duplicate-heading'];
  if (schema === undefined || problems.some(({ code }) => open.includes(code))) return true;
  return headings.some(({ column, heading }) => {
    const split = limbInHeading(heading);
    return (
      column === heading && split !== undefined && matchHeading(split.rest, schemas.feet)?.column.kind === 'number'
    );
  });
}

import { convertible, parseUnit } from '../../sheet/dimension.ts';
import { unguard } from '../guard.ts';
import { matchHeading, withoutUnit, wordsOf } from '../headings.ts';
import { isMissing } from '../missingWords.ts';
import type { DecimalMark } from '../parseQuantity.ts';
import { readCell } from '../readCell.ts';
import type { ColumnSchema, TableSchema } from '../schemas.ts';

/** How well a column of a file fits one of a table. */
export interface ColumnMatch {
  readonly column: ColumnSchema;
  /** From 0 to 1. */
  readonly score: number;
  readonly unit?: string;
}

/** A heading shares at least so many of its words with the name that it stands for. */
const enoughWords = 0.55;
/** “Angle” alone is half of “toe angle”. */
const halfTheWords = 0.5;
/** Of the cells, so many must read as the column's. */
const enoughCells = 0.5;
const sureCells = 0.9;

/**
 * The columns of a table that a column of a file may be, best first: by its heading's words and unit, and by how its
 * cells read. A column without a telling heading is taken for dates or limbs where nearly all its cells are, and one word
 * that several columns have (“angle”, “toe”) for the first of them that most of its cells fit.
 * @param cells  some of its cells
 */
export function headingMatches(
  heading: string,
  cells: readonly string[],
  schema: TableSchema,
  mark: DecimalMark = '.',
): ColumnMatch[] {
  const said = cells.map(unguard).filter((text) => !isMissing(text));
  const meant = matchHeading(heading, schema);
  const { unit } = withoutUnit(wordsOf(heading));
  const told = schema.columns
    .flatMap((column): ColumnMatch[] => {
      const exact = meant && !meant.wrongUnit && meant.column === column;
      if (exact && meant.exact) return [{ column, score: 1 }];
      const fits =
        unit === undefined || column.kind !== 'number' || convertible(parseUnit(unit), parseUnit(column.unit));
      if (!fits) return [];
      const words = exact ? 1 : likeness(heading, column);
      const toldByCells = column.kind === 'date' || column.name === 'limb';
      if (words < enoughWords && !toldByCells) return [];
      const told = column.kind === 'number' ? unit : undefined;
      const guessed = told ?? unitOfCells(said, column, mark);
      const share = shareRead(said, column, guessed, mark);
      if (words >= enoughWords && share >= enoughCells)
        return [{ column, score: 0.5 + 0.3 * words + 0.15 * share, ...(guessed && { unit: guessed }) }];
      if (exact) return [{ column, score: 0.6, ...(told && { unit: told }) }];
      return toldByCells && said.length > 0 && share >= sureCells ? [{ column, score: 0.4 * share }] : [];
    })
    .sort((a, b) => b.score - a.score);
  return told.length > 0 || stemOf(heading).length > 1 ? told : vagueMatch(heading, said, schema, mark);
}

function vagueMatch(heading: string, said: readonly string[], schema: TableSchema, mark: DecimalMark): ColumnMatch[] {
  const { unit: written } = withoutUnit(wordsOf(heading));
  for (const column of schema.columns) {
    if (column.kind !== 'number' || said.length === 0 || likeness(heading, column) < halfTheWords) continue;
    if (written !== undefined && !convertible(parseUnit(written), parseUnit(column.unit))) continue;
    const unit = written ?? unitOfCells(said, column, mark);
    if (shareRead(said, column, unit, mark) >= enoughCells) return [{ column, score: 0.2, ...(unit && { unit }) }];
  }
  return [];
}

const stemOf = (heading: string) => withoutUnit(wordsOf(heading)).stem.split(' ');
const known = new WeakMap<ColumnSchema, readonly (readonly string[])[]>();

/** How much of its words a heading shares with the best of a column's names, from 0 to 1. */
function likeness(heading: string, column: ColumnSchema): number {
  const words = new Set(stemOf(heading));
  const forms = known.get(column) ?? [column.name, column.title, ...column.headings].map(stemOf);
  known.set(column, forms);
  return Math.max(
    ...forms.map((form) => {
      const shared = form.filter((word) => words.has(word)).length;
      return shared / (words.size + form.length - shared);
    }),
  );
}

/** How many of the texts read as the column's cells, from 0 to 1; without any texts nothing speaks against it. */
function shareRead(said: readonly string[], schema: ColumnSchema, headingUnit: string | undefined, mark: DecimalMark) {
  if (said.length === 0) return 1;
  const { name, kind, unit } = schema;
  const plan = { name, heading: name, kind, unit, schema, headingUnit };
  // Either order of day and month will do here: that is asked later.
  const reads = (text: string) => {
    const read = readCell(plan, text, { mark, dates: 'dmy' });
    return 'cell' in read || (kind === 'date' && 'cell' in readCell(plan, text, { mark, dates: 'mdy' }));
  };
  return said.filter(reads).length / said.length;
}

/** Units in which people measure, by the column's own. */
const usual: Readonly<Record<string, readonly string[]>> = {
  mm: ['mm', 'cm', '[in_i]'],
  cm: ['cm', 'mm', '[in_i]', 'm'],
  kg: ['kg', '[lb_av]'],
  deg: ['deg'],
};

/** The units that numbers of a column may be in. */
export function usualUnits(unit: string): readonly string[] {
  return Object.hasOwn(usual, unit) ? usual[unit] : [unit];
}

/**
 * The unit that numbers without one must be in, told by their size: where they are beyond what a horse can have in the
 * column's own unit, the one in which most are within, and nearest its middle.
 */
function unitOfCells(said: readonly string[], column: ColumnSchema, mark: DecimalMark): string | undefined {
  const { kind, unit, within } = column;
  if (kind !== 'number' || !within || within[0] <= 0 || said.length === 0) return undefined;
  const share = (code: string) => shareRead(said, column, code, mark);
  if (share(unit) >= enoughCells) return undefined;
  const middle = Math.log(within[0] * within[1]) / 2;
  const distance = (code: string) => {
    const plan = { name: '', heading: '', kind, unit, headingUnit: code };
    const sizes = said.flatMap((text) => {
      const read = readCell(plan, text, { mark });
      return 'cell' in read && typeof read.cell === 'number' && read.cell > 0
        ? [Math.abs(Math.log(read.cell) - middle)]
        : [];
    });
    return sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
  };
  return usualUnits(unit)
    .filter((code) => code !== unit && share(code) >= sureCells)
    .map((code) => [distance(code), code] as const)
    .sort(([a], [b]) => a - b)[0]?.[1];
}

import { type ColumnInput, type Columns, rowCount, TextColumn, toColumn } from '../sheet/column.ts';
import { groupRows } from '../sheet/groups.ts';
import type { Groups } from '../sheet/table.ts';
import { say } from '../words/say.ts';
import { context } from './context.ts';
import { endOf, type Limb, sideOf } from './limbs.ts';
import { measured } from './measured.ts';
import type { Problem } from './problem.ts';

const footKeys = ['horse_id', 'date', 'limb', 'moment'] as const;

/**
 * Normalised feet made whole: the moment where none was written, repeats numbered, every measured column there
 * (empty where nobody measured), and which end and side each limb is.
 * @returns the columns in their order: keys, circumstances, measured, then `end`, `side` and `poorly_seen` (1 for a poor
 *   view or hair over the hairline), then the table's own others; a problem for each row that repeats another's keys
 */
export function prepareFeet(feet: Columns, file: string): { columns: Columns; problems: Problem[] } {
  const rows = rowCount(feet);
  const columns: Columns = Object.create(null);
  for (const name of ['horse_id', 'date', 'limb']) columns[name] = feet[name];
  columns.moment = momentColumn(feet, rows);
  const { repeat, problems } = repeatColumn({ ...feet, moment: columns.moment }, rows, file);
  columns.repeat = repeat;
  for (const { name, tables } of context)
    if (tables.includes('feet') && !Object.hasOwn(columns, name) && Object.hasOwn(feet, name))
      columns[name] = feet[name];
  for (const { name, unit, table } of measured)
    if (table === 'feet') columns[name] = Object.hasOwn(feet, name) ? feet[name] : { unit, values: empty(rows) };
  const limb = toColumn(columns.limb) as TextColumn;
  columns.end = wordsOf(limb, endOf);
  columns.side = wordsOf(limb, sideOf);
  columns.poorly_seen = poorlySeen(columns, rows);
  for (const [name, column] of Object.entries(feet)) if (!Object.hasOwn(columns, name)) columns[name] = column;
  return { columns, problems };
}

/** Rows sorted into readings of one foot at one moment. */
export function readingsOfAFoot(columns: Columns): Groups {
  return groupRows(
    footKeys.map((name) => toColumn(columns[name])),
    rowCount(columns),
  );
}

function empty(rows: number): Float64Array {
  return new Float64Array(rows).fill(Number.NaN);
}

/** A foot whose moment nobody wrote was measured between visits. */
function momentColumn(feet: Columns, rows: number): TextColumn {
  if (!Object.hasOwn(feet, 'moment')) return new TextColumn(new Int32Array(rows), ['between']);
  const column = toColumn(feet.moment) as TextColumn;
  if (!column.codes.includes(-1)) return column;
  const levels = column.levels.includes('between') ? column.levels : [...column.levels, 'between'];
  const between = levels.indexOf('between');
  return new TextColumn(
    column.codes.map((code) => (code < 0 ? between : code)),
    levels,
  );
}

/** Numbers written by the user stay; a foot's readings without one are numbered after its largest. */
function repeatColumn(feet: Columns, rows: number, file: string): { repeat: ColumnInput; problems: Problem[] } {
  const { codes, count } = readingsOfAFoot(feet);
  const given = Object.hasOwn(feet, 'repeat') ? (feet.repeat.values as Float64Array) : empty(rows);
  const largest = new Float64Array(count);
  const foot = { kind: 'number', unit: '1', values: Float64Array.from(codes) } as const;
  const same = groupRows([foot, { kind: 'number', unit: '1', values: given }], rows);
  const seen = new Uint8Array(same.count);
  const problems: Problem[] = [];
  given.forEach((number, row) => {
    if (Number.isNaN(number)) return;
    largest[codes[row]] = Math.max(largest[codes[row]], number);
    if (seen[same.codes[row]] === 1)
      problems.push({
        ...{ code: 'same-row-twice', file, row: row + 2, column: '', value: String(number) },
        expected: say`one row for each horse, date, limb, moment and repeat`,
        remedy: say`Give each reading of a foot its own repeat number, or remove the row that stands twice; both are used meanwhile`,
      });
    seen[same.codes[row]] = 1;
  });
  const values = given.map((number, row) => (Number.isNaN(number) ? ++largest[codes[row]] : number));
  return { repeat: { unit: '1', values }, problems };
}

function wordsOf(limb: TextColumn, wordFor: typeof endOf | typeof sideOf): TextColumn {
  const words = limb.levels.map((level) => wordFor(level as Limb));
  const levels = [...new Set<string>(words)];
  const codes = words.map((word) => levels.indexOf(word));
  return new TextColumn(
    limb.codes.map((code) => (code < 0 ? -1 : codes[code])),
    levels,
  );
}

function poorlySeen(columns: Columns, rows: number): ColumnInput {
  const view = Object.hasOwn(columns, 'view_quality') ? (toColumn(columns.view_quality) as TextColumn) : undefined;
  const hair = Object.hasOwn(columns, 'hair_over_hairline') ? columns.hair_over_hairline.values : undefined;
  const poorly = (_: unknown, row: number): number => Number(view?.at(row) === 'poor' || hair?.[row] === 1);
  return { kind: 'boolean', values: Float64Array.from({ length: rows }, poorly) };
}

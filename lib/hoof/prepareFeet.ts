import { type ColumnInput, type Columns, rowCount, TextColumn, toColumn } from '../sheet/column.ts';
import { groupRows } from '../sheet/groups.ts';
import type { Groups } from '../sheet/table.ts';
import { context } from './context.ts';
import { endOf, isLimb, sideOf } from './limbs.ts';
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
  const take = (name: string, otherwise: () => ColumnInput): void => {
    columns[name] = Object.hasOwn(feet, name) ? feet[name] : otherwise();
  };
  take('horse_id', () => noText(rows));
  take('date', () => noText(rows));
  take('limb', () => noText(rows));
  columns.moment = momentColumn(feet, rows);
  const { repeat, problems } = repeatColumn({ ...feet, moment: columns.moment }, rows, file);
  columns.repeat = repeat;
  for (const { name, tables } of context)
    if (tables.includes('feet') && !Object.hasOwn(columns, name) && Object.hasOwn(feet, name))
      columns[name] = feet[name];
  for (const { name, unit, table } of measured)
    if (table === 'feet') take(name, () => ({ unit, values: new Float64Array(rows).fill(Number.NaN) }));
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

function noText(rows: number): TextColumn {
  return new TextColumn(new Int32Array(rows).fill(-1), []);
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
  const given = Object.hasOwn(feet, 'repeat') ? (feet.repeat.values as Float64Array) : undefined;
  const largest = new Float64Array(count);
  const problems: Problem[] = [];
  if (given !== undefined) {
    const seen = groupRows(
      [
        { kind: 'number', unit: '1', values: Float64Array.from(codes) },
        { kind: 'number', unit: '1', values: given },
      ],
      rows,
    );
    const first = new Uint8Array(seen.count);
    for (let row = 0; row < rows; row++) {
      if (given[row] > largest[codes[row]]) largest[codes[row]] = given[row];
      if (Number.isNaN(given[row])) continue;
      if (first[seen.codes[row]]++ === 0) continue;
      problems.push({
        code: 'same-row-twice',
        file,
        row: row + 2,
        column: '',
        value: String(given[row]),
        expected: 'one row for each horse, date, limb, moment and repeat',
        remedy:
          'Give each reading of a foot its own repeat number, or remove the row that stands twice; both are used meanwhile',
      });
      first[seen.codes[row]] = 1;
    }
  }
  const values = new Float64Array(rows);
  for (let row = 0; row < rows; row++)
    values[row] = given === undefined || Number.isNaN(given[row]) ? ++largest[codes[row]] : given[row];
  return { repeat: { unit: '1', values }, problems };
}

function wordsOf(limb: TextColumn, wordFor: typeof endOf | typeof sideOf): TextColumn {
  const words = limb.levels.map((level) => (isLimb(level) ? wordFor(level) : ''));
  const levels = [...new Set<string>(words)].filter((word) => word !== '');
  const codes = words.map((word) => levels.indexOf(word));
  return new TextColumn(
    limb.codes.map((code) => (code < 0 ? -1 : codes[code])),
    levels,
  );
}

function poorlySeen(columns: Columns, rows: number): ColumnInput {
  const values = new Float64Array(rows);
  if (Object.hasOwn(columns, 'view_quality')) {
    const view = toColumn(columns.view_quality) as TextColumn;
    const poor = view.levels.indexOf('poor');
    if (poor >= 0) for (let row = 0; row < rows; row++) if (view.codes[row] === poor) values[row] = 1;
  }
  if (Object.hasOwn(columns, 'hair_over_hairline')) {
    const hair = columns.hair_over_hairline.values;
    for (let row = 0; row < rows; row++) if (hair[row] === 1) values[row] = 1;
  }
  return { kind: 'boolean', values };
}

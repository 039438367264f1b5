import { describeColumn } from '../files/describeColumn.ts';
import { schemas } from '../files/schemas.ts';
import type { Column } from '../sheet/column.ts';
import { conversion, convertible, parseUnit } from '../sheet/dimension.ts';
import type { ComputedDefinition } from '../sheet/edits.ts';
import type { Entered } from './journal.ts';
import { type KeyedRows, keyedRows } from './keyedRows.ts';
import type { KeptTable, TableName } from './tables.ts';

/** A cell of a row that both tables have: `row` is its number in ours, from 0. */
export interface MergedCell {
  readonly column: string;
  readonly row: number;
  readonly ours: Entered;
  readonly theirs: Entered;
}

/** A computed column that both readers made, by different formulas. */
export interface MergedFormula {
  readonly ours: ComputedDefinition;
  readonly theirs: ComputedDefinition;
}

/** A row of theirs that comes in: its number in theirs, and the repeat that it has to be given, where it needs one. */
export interface NewRow {
  readonly row: number;
  readonly repeat?: number;
}

export interface MergedColumn {
  readonly name: string;
  readonly holds: Column['kind'];
  /** UCUM code. */
  readonly unit: string;
}

/** What two tables make of each other. Nothing is changed yet. */
export interface Merge {
  readonly table: TableName;
  readonly newRows: readonly NewRow[];
  /** Cells that are blank in ours and not in theirs. A blank of theirs takes nothing away. */
  readonly filled: readonly MergedCell[];
  /** Cells that hold one thing here and another there: someone has to choose. */
  readonly conflicts: readonly MergedCell[];
  readonly newFormulas: readonly ComputedDefinition[];
  readonly formulaConflicts: readonly MergedFormula[];
  /** Repeats of ours that were numbered by their order and have to be written down, as rows come in beside them. */
  readonly numbered: readonly { readonly row: number; readonly repeat: number }[];
  /** How many rows both have that need nothing. */
  readonly equal: number;
  /** The columns of theirs that are merged, as they are in ours where it has them. */
  readonly columns: readonly MergedColumn[];
  /** What theirs holds, in the kind and unit of ours. */
  readonly cellOfTheirs: (column: string, row: number) => Entered;
}

/**
 * Compares two tables of a kind by their keys (a foot's horse, date, limb, moment and repeat; a horse's name; a visit's
 * horse and date): rows that are new, cells that one of them lacks, cells that differ. Rows without their keys are the
 * same only where all their cells are. Built-in computed columns are left to be computed.
 * @param ours  the record, which stays as it is
 * @param theirs  another device's record, or a table from a file
 * @example mergeOf('feet', record, readAgain).newRows // the rows that were typed elsewhere
 */
export function mergeOf(table: TableName, ours: KeptTable, theirs: KeptTable): Merge {
  const codes = new Map<string, number>();
  const [own, other] = [keyedRows(table, ours, codes), keyedRows(table, theirs, codes)];
  const { keys, numbered: repeatKey } = schemas[table];
  const columns = Object.keys(theirs.columns)
    .filter((name) => !isComputed(name))
    .map((name): MergedColumn => {
      const { kind: holds, unit } = own.column(name) ?? other.column(name)!;
      return { name, holds, unit };
    });
  const kinds = new Map(columns.map((column) => [column.name, column]));
  const cellOfTheirs = (name: string, row: number) =>
    converted(other.at(name, row), other.column(name), kinds.get(name)!);

  const places = rowsByKey(own, (row) => wholeRow(Object.keys(ours.columns), (name) => own.at(name, row)));
  const counts = new Map<string, number>();
  const newRows: NewRow[] = [];
  const filled: MergedCell[] = [];
  const conflicts: MergedCell[] = [];
  const ownGroups = new Set(own.groups);
  const grown = new Set<string>();
  let equal = 0;
  for (let there = 0; there < other.rows; there++) {
    const group = other.groups[there];
    const whole = () => wholeRow(Object.keys(theirs.columns), (name) => cellOfTheirs(name, there));
    const key = keyOf(other, there, whole);
    const nth = counts.get(key) ?? 0;
    counts.set(key, nth + 1);
    const row = places.get(key)?.[nth];
    if (row === undefined) {
      const besides = repeatKey !== undefined && group !== undefined && ownGroups.has(group);
      if (besides) grown.add(group);
      newRows.push(besides ? { row: there, repeat: other.repeats[there] } : { row: there });
      continue;
    }
    const before = filled.length + conflicts.length;
    for (const { name: column } of columns) {
      if (keys.includes(column)) continue;
      const cell = cellOfTheirs(column, there);
      const here = own.at(column, row);
      if (isBlank(cell) || sameEntered(here, cell)) continue;
      (isBlank(here) ? filled : conflicts).push({ column, row, ours: here, theirs: cell });
    }
    if (filled.length + conflicts.length === before) equal++;
  }
  const numbered = own.groups.flatMap((group, row) =>
    group !== undefined && grown.has(group) && own.unnumbered(row) ? { row, repeat: own.repeats[row] } : [],
  );
  return {
    ...{ table, newRows, filled, conflicts, numbered, equal, columns, cellOfTheirs },
    ...formulasOf(ours.own ?? [], theirs.own ?? []),
  };
}

/** Whether two tables differ in nothing that ours could take over. */
export function nothingNew({ newRows, filled, conflicts, newFormulas, formulaConflicts }: Merge): boolean {
  return [newRows, filled, conflicts, newFormulas, formulaConflicts].every(({ length }) => length === 0);
}

const isBlank = (cell: Entered) => cell === null;

/** Spreadsheet programs keep fifteen digits of a number. */
const fifteenDigits = 1e-14;

/** Whether two cells say the same; numbers may differ by what a spreadsheet program rounds off. */
export function sameEntered(a: Entered, b: Entered): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= fifteenDigits * Math.abs(a);
  if (a !== null && b !== null && typeof a === 'object' && typeof b === 'object') return a.text === b.text;
  return a === b;
}

/** Built-in computed columns come along in tidy files, and are worked out afresh here. */
function isComputed(name: string): boolean {
  const typed = Object.values(schemas).some(({ columns }) => columns.some((column) => column.name === name));
  return !typed && describeColumn(name).title !== undefined;
}

const keyOf = ({ groups, repeats }: KeyedRows, row: number, whole: () => string) =>
  groups[row] === undefined ? whole() : `${groups[row]};${repeats[row]}`;

function rowsByKey(rows: KeyedRows, whole: (row: number) => string): Map<string, number[]> {
  const places = new Map<string, number[]>();
  for (let row = 0; row < rows.rows; row++) {
    const key = keyOf(rows, row, () => whole(row));
    const same = places.get(key);
    if (same) same.push(row);
    else places.set(key, [row]);
  }
  return places;
}

/** All that stands in a row that lacks its keys: only another just like it is the same row. */
function wholeRow(names: readonly string[], at: (name: string) => Entered): string {
  const cells = names.flatMap((name) => {
    const cell = isComputed(name) ? null : at(name);
    return cell === null ? [] : [[name, cell] as const];
  });
  return JSON.stringify(cells.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** What a cell says in another kind and unit; where it can't, its text, which waits to be mended. */
function converted(cell: Entered, from: Column | undefined, { holds, unit }: MergedColumn): Entered {
  if (cell === null || typeof cell === 'object' || from === undefined) return cell;
  if (holds === 'text') return String(cell);
  if (from.kind !== holds) return { text: String(cell) };
  if (from.unit === unit || typeof cell === 'string') return cell;
  const [source, target] = [parseUnit(from.unit), parseUnit(unit)];
  return convertible(source, target) ? cell * conversion(source, target) : { text: `${cell} ${from.unit}` };
}

function formulasOf(ours: readonly ComputedDefinition[], theirs: readonly ComputedDefinition[]) {
  const known = new Map(ours.map((definition) => [definition.name, definition]));
  const formulaConflicts = theirs.flatMap((definition) => {
    const here = known.get(definition.name);
    const differs = here && (here.formula !== definition.formula || here.unit !== definition.unit);
    return differs ? [{ ours: here, theirs: definition }] : [];
  });
  return { formulaConflicts, newFormulas: theirs.filter(({ name }) => !known.has(name)) };
}

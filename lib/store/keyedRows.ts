import { schemas } from '../files/schemas.ts';
import { cellAt } from '../sheet/cell.ts';
import { type Column, rowCount, toColumn } from '../sheet/column.ts';
import type { Entered } from './journal.ts';
import type { KeptTable, TableName } from './tables.ts';

/** A foot whose moment nobody wrote was measured between visits. */
const UNSAID_MOMENT = 'between';

/** The rows of a table by what tells one from another. */
export interface KeyedRows {
  readonly rows: number;
  /** What stands in a cell; `null` too where there is no such column. */
  at(column: string, row: number): Entered;
  column(name: string): Column | undefined;
  /** Each row's keys but the repeat, as one text; `undefined` where one is missing or could not be read. */
  readonly groups: readonly (string | undefined)[];
  /** Each row's repeat: the number that was written, else the next after the largest of its group. */
  readonly repeats: Float64Array;
  /** Whether the repeat was left to the order of the rows. */
  readonly unnumbered: (row: number) => boolean;
}

/** Reads a table by its keys. Two tables are compared with one `codes`, which says the same text by the same number. */
export function keyedRows(name: TableName, { columns, entered }: KeptTable, codes: Map<string, number>): KeyedRows {
  const { keys, required, numbered } = schemas[name];
  const rows = rowCount(columns);
  const known = new Map(Object.keys(columns).map((column) => [column, toColumn(columns[column])]));
  const at = (column: string, row: number): Entered => {
    const text = entered?.get(column)?.get(row);
    if (text !== undefined) return { text };
    const found = known.get(column);
    return found ? cellAt(found, row) : null;
  };
  const keyed = keys.filter((key) => key !== numbered);
  const groupOf = (row: number): string | undefined => {
    const parts: (number | string)[] = [];
    for (const key of keyed) {
      const cell = key === 'moment' ? (at(key, row) ?? UNSAID_MOMENT) : at(key, row);
      if ((cell === null && required.includes(key)) || (cell !== null && typeof cell === 'object')) return undefined;
      parts.push(typeof cell === 'string' ? `t${codeOf(codes, cell)}` : (cell ?? ''));
    }
    return parts.join(',');
  };
  const groups = Array.from({ length: rows }, (_, row) => groupOf(row));
  const given = (row: number) => {
    const cell = numbered === undefined ? 1 : at(numbered, row);
    return typeof cell === 'number' ? cell : Number.NaN;
  };
  return {
    rows,
    at,
    column: (column) => known.get(column),
    groups,
    repeats: numberedRepeats(groups, given),
    unnumbered: (row) => Number.isNaN(given(row)),
  };
}

function codeOf(codes: Map<string, number>, text: string): number {
  const known = codes.get(text);
  if (known !== undefined) return known;
  codes.set(text, codes.size);
  return codes.size - 1;
}

/** Numbers that were written stay; the other rows of a group are numbered after its largest, as in the herd. */
function numberedRepeats(groups: readonly (string | undefined)[], given: (row: number) => number): Float64Array {
  const largest = new Map<string | undefined, number>();
  const repeats = Float64Array.from(groups, (group, row) => {
    const repeat = given(row);
    if (repeat > (largest.get(group) ?? 0)) largest.set(group, repeat);
    return repeat;
  });
  groups.forEach((group, row) => {
    if (!Number.isNaN(repeats[row])) return;
    const next = (largest.get(group) ?? 0) + 1;
    largest.set(group, next);
    repeats[row] = next;
  });
  return repeats;
}

import type { Cell } from '../sheet/cell.ts';
import type { Kind } from '../sheet/column.ts';
import type { ComputedDefinition } from '../sheet/edits.ts';
import type { RowId } from './rowIds.ts';
import type { TableName } from './tables.ts';

export type { RowId } from './rowIds.ts';

/** The layout that this program writes. A record with a greater number is a newer program's: it is refused, untouched. */
export const RECORD_VERSION = 3;

/** What stands in a cell: a value, `null` where nothing does, or a text that could not be read and waits to be mended. */
export type Entered = Cell | { readonly text: string };

/** New contents of cells in one column: `after[i]` replaces `before[i]` in row `rows[i]`. */
export interface CellsEdit {
  readonly kind: 'cells';
  readonly column: string;
  /** What the column holds, so that it can be made where a table has none of that name. */
  readonly holds: Kind;
  /** UCUM code of the numbers. */
  readonly unit: string;
  readonly rows: readonly RowId[];
  readonly before: readonly Entered[];
  readonly after: readonly Entered[];
}

/** One column of rows that come or go, a cell a row. */
export interface RowsColumn {
  readonly column: string;
  readonly holds: Kind;
  readonly unit: string;
  readonly cells: readonly Entered[];
}

/** Rows that come or go, whole; what each holds makes it possible to bring it back. */
export interface RowsEdit {
  readonly kind: 'rows';
  readonly how: 'add' | 'remove';
  readonly rows: readonly RowId[];
  /** Below which row each stands, of the table or earlier in `rows`; `null` is the top. One that is gone means the end. */
  readonly below: readonly (RowId | null)[];
  readonly columns: readonly RowsColumn[];
}

/** One of the reader's own computed columns; `null` where there is none before or after. */
export interface OwnColumnEdit {
  readonly kind: 'own column';
  readonly column: string;
  /** Its place among them, counted from 0. */
  readonly place: number;
  readonly before: ComputedDefinition | null;
  readonly after: ComputedDefinition | null;
}

/** A whole table that came from a file, in place of the one before; the tables themselves are kept beside the journal. */
export interface OpenedEdit {
  readonly kind: 'opened';
  /** The names of the files; `null` where there was no table. */
  readonly before: string | null;
  readonly after: string | null;
}

/** What was done to one table, with what stood there before. */
export type JournalEdit = CellsEdit | RowsEdit | OwnColumnEdit | OpenedEdit;

/**
 * One change as people speak of it, as plain data that JSON can hold. Entries are never changed once they are written.
 * What happened first is decided by `counter`, never by the clock of a device.
 */
export interface JournalEntry {
  /** Unlike that of any other entry on any device. */
  readonly id: string;
  /** What the device's clock said, in milliseconds since 1970-01-01 UTC. */
  readonly at: number;
  /** Greater than that of every entry known to the device at the time, whatever its clock says. */
  readonly counter: number;
  readonly device: string;
  /** The name of who did it as they gave it, `''` where they gave none. */
  readonly who: string;
  /** What it was, as on a button: `typing in Toe angle`. */
  readonly words: string;
  readonly table: TableName;
  readonly edits: readonly JournalEdit[];
}

/** Which of two entries comes first: the lesser counter, and where they are equal the lesser id. */
export function inOrder(a: JournalEntry, b: JournalEntry): number {
  return a.counter - b.counter || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** The edit that takes this one back. */
export function undone(edit: JournalEdit): JournalEdit {
  if (edit.kind === 'rows') return { ...edit, how: edit.how === 'add' ? 'remove' : 'add' };
  return { ...edit, before: edit.after, after: edit.before } as JournalEdit;
}

import type { Problem } from '../files/problem.ts';
import type { Columns } from '../sheet/column.ts';
import type { ComputedDefinition } from '../sheet/edits.ts';
import type { KeptPage } from './keptPage.ts';
import type { RowIds } from './rowIds.ts';

/** One of the reader's own tables as it was last opened. */
export interface KeptTable {
  readonly columns: Columns;
  readonly problems: readonly Problem[];
  /** The name of the file it came from. */
  readonly file: string;
  /** The text of every cell that could not be used, by column and row (from 0). */
  readonly entered?: ReadonlyMap<string, ReadonlyMap<number, string>>;
  /** The reader's own computed columns. */
  readonly own?: readonly ComputedDefinition[];
  /** An invented table, or a changed copy of one: none of it was ever measured. */
  readonly invented?: boolean;
  /** What brought the rows that it was opened with, as their ids say; they are numbered from 0. */
  readonly opened?: string;
  /** The ids of the rows, where they are no longer those that it was opened with, in order. */
  readonly ids?: RowIds;
}

/** The tables of a record. */
export type TableName = 'feet' | 'horses' | 'visits';

export type ByName<Table> = { readonly [name in TableName]?: Table };

/** What there is of each table, with its name. */
export function entriesOf<Table>(tables: ByName<Table>): [TableName, Table][] {
  return Object.entries(tables) as [TableName, Table][];
}

/** The tables of one record, those that it has. */
export type KeptTables = ByName<KeptTable>;

/** What the database holds of a table beside its columns, which stand in entries of their own. */
export interface TableHead extends Omit<KeptTable, 'columns'> {
  readonly names: readonly string[];
  /** Under which name its columns are kept. */
  readonly stock: string;
}

/** What the database holds of a record beside columns and journal. */
export interface RecordHead {
  /** The number of the last entry of the journal that is worked into the tables. */
  readonly through: number;
  /** The greatest counter of the entries that are. */
  readonly counter: number;
  readonly tables: ByName<TableHead>;
  /** Tables that another has taken the place of, as they stood before the entry of that number. */
  readonly earlier: readonly { readonly until: number; readonly table: TableName; readonly head: TableHead }[];
}

/** One of the reader's records. */
export interface RecordInfo {
  readonly id: string;
  readonly name: string;
  /** When it was begun, in milliseconds since 1970-01-01 UTC. */
  readonly made: number;
  /** A changed copy of the invented herd: none of it was ever measured. */
  readonly invented?: boolean;
  /** Pages of its owner's own, in the order in which they were kept; none where left out. */
  readonly pages?: readonly KeptPage[];
}

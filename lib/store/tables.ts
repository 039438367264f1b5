import type { Problem } from '../files/problem.ts';
import type { Columns } from '../sheet/column.ts';
import type { PackedColumns } from './packed.ts';

/** One of the reader's own tables as it was last opened. */
export interface KeptTable {
  readonly columns: Columns;
  readonly problems: readonly Problem[];
  /** The name of the file it came from. */
  readonly file: string;
}

export type TableName = 'feet' | 'horses' | 'visits';

export type ByName<Table> = { readonly [name in TableName]?: Table };

export type KeptTables = ByName<KeptTable>;

/** A table as the database holds it. */
export type PackedTable = Omit<KeptTable, 'columns'> & { readonly columns: PackedColumns };

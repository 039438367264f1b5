import type { Problem } from '../files/problem.ts';
import type { Columns } from '../sheet/column.ts';

/** One of the reader's own tables as it was last opened. */
export interface KeptTable {
  readonly columns: Columns;
  readonly problems: readonly Problem[];
  /** The name of the file it came from. */
  readonly file: string;
}

export type TableName = 'feet' | 'horses' | 'visits';

export type KeptTables = { readonly [name in TableName]?: KeptTable };

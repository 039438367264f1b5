import { type ColumnInput, type Columns, TextColumn } from '../sheet/column.ts';

/** Text as a database can hold it: a class would come back without its prototype. */
type PackedColumn = ColumnInput | { readonly codes: Int32Array; readonly levels: readonly string[] };

export type PackedColumns = readonly (readonly [name: string, column: PackedColumn])[];

/** The columns of a table as plain data, in order, whatever they are called. */
export function packed(columns: Columns): PackedColumns {
  return Object.entries(columns).map(([name, column]) => [
    name,
    column instanceof TextColumn ? { codes: column.codes, levels: column.levels } : column,
  ]);
}

/** The inverse of `packed`. */
export function unpacked(entries: PackedColumns): Columns {
  const columns: Columns = Object.create(null);
  for (const [name, column] of entries)
    columns[name] = 'codes' in column ? new TextColumn(column.codes, column.levels) : column;
  return columns;
}

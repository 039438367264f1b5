import { type Column, type Columns, toColumn } from '../sheet/column.ts';

interface NamedColumns {
  readonly names: readonly string[];
  column(name: string): Column;
}

/** Columns by name, or anything that has them as a sheet does. */
export type Writable = Columns | NamedColumns;

/** The one form of what can be written. */
export function namedColumns(table: Writable): NamedColumns {
  if (typeof table.column === 'function') return table as NamedColumns;
  const columns = table as Columns;
  return { names: Object.keys(columns), column: (name) => toColumn(columns[name]) };
}

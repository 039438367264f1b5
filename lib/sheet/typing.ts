import type { Cell } from './cell.ts';
import type { Column, ColumnInput, Columns, NumberColumn, TextColumn } from './column.ts';

/** What TypeScript knows of a column from what was handed in. */
export type ColumnOf<Input> = Input extends { readonly values: Float64Array }
  ? NumberColumn
  : Input extends { readonly values: readonly string[] }
    ? TextColumn
    : Column;

/** The names of a sheet's columns; any text where TypeScript doesn't know them. */
export type NameOf<C extends Columns> = keyof C & string;

/** Columns as `Sheet.from` takes them. */
export type Sources = Readonly<Record<string, ColumnInput & { readonly title?: string }>>;

/** Cells of one new row; what is left out is missing. */
export type NewRow<C extends Columns> = Readonly<Partial<Record<NameOf<C>, Cell>>>;

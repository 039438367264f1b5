import type { Column, Columns } from '../../lib/sheet/column.ts';

export type Cells = Readonly<Record<string, string | number>>;

/** Columns from rows, as a person would write them; a cell that a row lacks is missing. */
export function columnsOf(rows: readonly Cells[]): Columns {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return Object.fromEntries(
    names.map((name) => {
      const cells = rows.map((row) => row[name]);
      const numeric = cells.every((cell) => cell === undefined || typeof cell === 'number');
      return numeric
        ? [name, { values: Float64Array.from(cells, (cell) => (cell === undefined ? Number.NaN : Number(cell))) }]
        : [name, { values: cells.map((cell) => (cell === undefined ? '' : String(cell))) }];
    }),
  );
}

/** The numbers of a column, as a list. */
export function numbers(table: { column(name: string): { values: ArrayLike<unknown> } }, name: string): number[] {
  return Array.from(table.column(name).values as ArrayLike<number>);
}

/** The texts of a column, as a list. */
export function texts(table: { column(name: string): { values: ArrayLike<unknown> } }, name: string): string[] {
  return Array.from(table.column(name).values as ArrayLike<string>);
}

/** The standard errors of a column, as a list. */
export function errorsOf(table: { column(name: string): Column }, name: string): number[] {
  const column = table.column(name);
  return column.kind === 'text' ? [] : Array.from(column.error ?? []);
}

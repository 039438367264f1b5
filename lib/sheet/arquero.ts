import { ColumnTable } from 'arquero';
import type { Column, ColumnInput, Columns, Kind, TextColumn } from './column.ts';
import { dayMs } from './days.ts';
import type { Table } from './table.ts';

/**
 * As much of an Arquero table as sheets need, stated here so that Arquero's own types stay out of ours; any `ColumnTable`
 * is one. To use its verbs in TypeScript: `sheet.toArquero() as ColumnTable`.
 */
export interface ArqueroTable {
  numRows(): number;
  numCols(): number;
  columnNames(): string[];
  isFiltered(): boolean;
  isOrdered(): boolean;
  /** A column's values, filter and order applied. */
  array(name: string): ArrayLike<unknown>;
  /** A column as the table keeps it, `undefined` where there is none. */
  column(name: string): { readonly length: number; at(row: number): unknown } | undefined;
  get(name: string, row?: number): unknown;
  objects(): object[];
}

/** Text for Arquero: looked up in the dictionary as it is read, `null` for missing. */
class Words {
  constructor(readonly column: TextColumn) {}

  get length(): number {
    return this.column.codes.length;
  }

  at(row: number): string | null {
    const code = this.column.codes[row];
    return code === undefined || code < 0 ? null : this.column.levels[code];
  }

  *[Symbol.iterator](): Iterator<string | null> {
    for (let row = 0; row < this.length; row++) yield this.at(row);
  }
}

/**
 * An Arquero table over a table's own arrays: numbers (`NaN` for missing, dates as whole days, yes and no as 1 and 0) are the
 * very same `Float64Array`s, text is read through its dictionary, `null` for missing. Nothing is copied: don't write to it, and
 * take another one after an edit. Arquero leaves `NaN` out of its summaries, but takes `null` for 0 in arithmetic.
 */
export function toArquero(table: Table): ArqueroTable {
  const columns = table.names.map((name) => [name, shared(table.column(name))] as const);
  return new ColumnTable(Object.fromEntries(columns), [...table.names]) as unknown as ArqueroTable;
}

function shared(column: Column): Float64Array | Words {
  return column.kind === 'text' ? new Words(column) : column.values;
}

/**
 * Columns from an Arquero table, as it is filtered and ordered. A `Float64Array` is shared where nothing is filtered or
 * ordered. Numbers become a number column, `Date`s whole days, `true` and `false` 1 and 0; anything else is text. `null`
 * and `undefined` are missing.
 */
export function fromArquero(table: ArqueroTable): Columns {
  const arranged = table.isFiltered() || table.isOrdered();
  const columns = table.columnNames().map((name) => {
    const kept = table.column(name);
    if (kept instanceof Words && !arranged) return [name, { kind: 'text', values: kept.column.values }] as const;
    return [name, kept instanceof Float64Array && !arranged ? { values: kept } : read(table.array(name))] as const;
  });
  return Object.fromEntries(columns);
}

function read(values: ArrayLike<unknown>): ColumnInput {
  const sorts = new Set<Kind>();
  for (let row = 0; row < values.length; row++) if (!isMissing(values[row])) sorts.add(sortOf(values[row]));
  const [sort] = sorts;
  if (sorts.size === 1 && sort !== 'text')
    return {
      kind: sort,
      values: Float64Array.from(values, (value) => (isMissing(value) ? Number.NaN : toNumber(value))),
    };
  if (sorts.size === 0) return { values: new Float64Array(values.length).fill(Number.NaN) };
  return { values: Array.from(values, (value) => (isMissing(value) ? '' : toText(value))) };
}

function isMissing(value: unknown): boolean {
  return value === null || value === undefined || Number.isNaN(value);
}

function sortOf(value: unknown): Kind {
  if (value instanceof Date) return 'date';
  return typeof value === 'number' || typeof value === 'bigint'
    ? 'number'
    : typeof value === 'boolean'
      ? 'boolean'
      : 'text';
}

function toNumber(value: unknown): number {
  return value instanceof Date ? Math.floor(value.getTime() / dayMs) : Number(value);
}

function toText(value: unknown): string {
  return value instanceof Date ? value.toISOString() : String(value);
}

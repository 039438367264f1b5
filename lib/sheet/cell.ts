import type { Column } from './column.ts';

/** One value of a table as it is handed in and out: `null` is missing, a date is whole days, yes and no are 1 and 0. */
export type Cell = number | string | null;

const expected = {
  number: 'a finite number',
  date: 'a date as whole days since 1970-01-01',
  boolean: '1 for yes, 0 for no',
  text: 'text',
} as const;

/** What stands in a row; `null` where nothing does. */
export function cellAt(column: Column, row: number): Cell {
  if (column.kind === 'text') return column.codes[row] < 0 ? null : column.at(row);
  const value = column.values[row];
  return Number.isNaN(value) ? null : value;
}

/**
 * A value as the column keeps it: `NaN` and `''` are missing like `null`. Nothing is parsed: a number is not read from text.
 * @throws TypeError where the value is not of the column's kind
 */
export function toCell(name: string, kind: Column['kind'], value: Cell): Cell {
  if (value === null || value === '' || Number.isNaN(value)) {
    const rightKind = value === null || (typeof value === 'string') === (kind === 'text');
    if (rightKind) return null;
  }
  const fits =
    kind === 'text'
      ? typeof value === 'string'
      : Number.isFinite(value) &&
        (kind === 'date' ? Number.isInteger(value) : kind !== 'boolean' || value === 0 || value === 1);
  if (!fits) throw new TypeError(`${name}: ${expected[kind]} or null for missing was expected, found ${shown(value)}`);
  return value;
}

function shown(value: unknown): string {
  if (typeof value === 'string')
    return `the text ${JSON.stringify(value.length > 40 ? `${value.slice(0, 40)}…` : value)}`;
  if (typeof value === 'number' || typeof value === 'boolean' || value === undefined) return String(value);
  return Array.isArray(value) ? 'a list' : `a value of type ${typeof value}`;
}

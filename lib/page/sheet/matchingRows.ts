import { type Column, TextColumn } from '../../sheet/column.ts';
import type { Table } from '../../sheet/table.ts';

/** What a row must show to stay; text is compared without regard to case, numbers in the column's own unit. */
export type Condition =
  | { readonly column: string; readonly contains: string }
  | { readonly column: string; readonly from?: number; readonly to?: number };

export interface Order {
  readonly column: string;
  readonly direction: 'ascending' | 'descending';
}

const natural = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/**
 * The rows that meet every condition, in order. A missing value meets none and comes last in either direction; rows that
 * are equal keep their order.
 * @param rows the rows to choose from; all where left out
 */
export function matchingRows(
  table: Pick<Table, 'rows' | 'column'>,
  conditions: readonly Condition[],
  order?: Order,
  rows: Uint32Array = Uint32Array.from({ length: table.rows }, (_, row) => row),
): Uint32Array {
  const tests = conditions.map((condition) => testOf(table.column(condition.column), condition));
  const kept = tests.length === 0 ? rows.slice() : rows.filter((row) => tests.every((test) => test(row)));
  if (!order) return kept;
  const rank = rankOf(table.column(order.column));
  const sign = order.direction === 'ascending' ? 1 : -1;
  return kept.sort((a, b) => {
    const [x, y] = [rank(a), rank(b)];
    if (Number.isNaN(x) || Number.isNaN(y)) return Number(Number.isNaN(x)) - Number(Number.isNaN(y));
    return sign * (x - y);
  });
}

function testOf(column: Column, condition: Condition): (row: number) => boolean {
  if (column instanceof TextColumn) {
    const wanted = 'contains' in condition ? condition.contains.toLowerCase() : '';
    const levels = column.levels.map((level) => level.toLowerCase().includes(wanted));
    return (row) => column.codes[row] >= 0 && levels[column.codes[row]];
  }
  const { from = -Infinity, to = Infinity } = 'contains' in condition ? {} : condition;
  return (row) => column.values[row] >= from && column.values[row] <= to;
}

/** A number to sort by; `NaN` for missing. */
function rankOf(column: Column): (row: number) => number {
  if (!(column instanceof TextColumn)) return (row) => column.values[row];
  const places = new Float64Array(column.levels.length);
  [...column.levels.keys()]
    .sort((a, b) => natural.compare(column.levels[a], column.levels[b]))
    .forEach((level, place) => {
      places[level] = place;
    });
  return (row) => (column.codes[row] < 0 ? Number.NaN : places[column.codes[row]]);
}

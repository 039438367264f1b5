import { type Column, TextColumn } from '../../sheet/column.ts';
import { rowsWhere } from '../../sheet/rowsWhere.ts';
import type { Table } from '../../sheet/table.ts';
import { cellWord } from '../../words/cellWord.ts';

/** What a row must show to stay; text is compared without regard to case, as it is shown and as it is stored, numbers in the column's own unit. */
export type Condition =
  | { readonly column: string; readonly contains: string }
  | { readonly column: string; readonly from?: number; readonly to?: number };

export interface Order {
  readonly column: string;
  readonly direction: 'ascending' | 'descending';
}

/**
 * The rows that meet every condition, in order. A missing value meets none and comes last in either direction.
 * @param rows the rows to choose from, in their order; all where left out
 */
export function matchingRows(
  table: Table,
  conditions: readonly Condition[],
  order?: Order,
  rows: Uint32Array = allRows(table.rows),
): Uint32Array {
  const tests = conditions.map((condition) => testOf(table.column(condition.column), condition));
  const kept = tests.length === 0 ? rows : rows.filter((row) => tests.every((test) => test(row)));
  if (!order) return kept;
  const stays = new Uint8Array(table.rows);
  for (const row of kept) stays[row] = 1;
  return rowsWhere(table, { sort: { by: order.column, order: order.direction } }).filter((row) => stays[row] === 1);
}

function allRows(count: number): Uint32Array {
  const rows = new Uint32Array(count);
  for (let row = 0; row < count; row++) rows[row] = row;
  return rows;
}

function testOf(column: Column, condition: Condition): (row: number) => boolean {
  if (column instanceof TextColumn) {
    const wanted = 'contains' in condition ? condition.contains.toLowerCase() : '';
    const levels = column.levels.map((level) =>
      [level, cellWord(condition.column, level)].some((word) => word.toLowerCase().includes(wanted)),
    );
    return (row) => column.codes[row] >= 0 && levels[column.codes[row]];
  }
  const { from = -Infinity, to = Infinity } = 'contains' in condition ? {} : condition;
  return (row) => column.values[row] >= from && column.values[row] <= to;
}

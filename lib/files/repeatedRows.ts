import { type Column, TextColumn } from '../sheet/column.ts';
import { groupRows } from '../sheet/groups.ts';

/**
 * Rows that have the same keys as a row before them.
 * @param complete  keys that must not be missing for a row to count
 * @returns pairs of a row and the first row like it, both from 0
 */
export function repeatedRows(
  keys: readonly Column[],
  complete: readonly Column[],
  rows: number,
): { row: number; first: number }[] {
  const { codes, count } = groupRows(keys, rows);
  if (count === rows) return [];
  const firsts = new Int32Array(count).fill(-1);
  const pairs: { row: number; first: number }[] = [];
  for (let row = 0; row < rows; row++) {
    if (complete.some((column) => isMissingAt(column, row))) continue;
    const first = firsts[codes[row]];
    if (first < 0) firsts[codes[row]] = row;
    else pairs.push({ row, first });
  }
  return pairs;
}

function isMissingAt(column: Column, row: number): boolean {
  return column instanceof TextColumn ? column.codes[row] < 0 : Number.isNaN(column.values[row]);
}

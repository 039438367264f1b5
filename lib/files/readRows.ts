import type { CellStore } from './cellStore.ts';
import { type Layout, RowReader, type RowsRead } from './rowReader.ts';

/**
 * Reads rows of cells from bytes into one store a column.
 * @param bytes  UTF-8 that ends with a line end, as `decode` gives it
 * @param start  where the first row after the headings begins
 * @param stores  one a column, filled here
 * @param limit  how many rows at most
 */
export function readRows(
  bytes: Uint8Array,
  start: number,
  layout: Layout,
  stores: readonly CellStore[],
  limit = Number.POSITIVE_INFINITY,
): RowsRead {
  const reader = new RowReader(bytes, start, layout, stores);
  reader.readTo(bytes.length, limit);
  return reader.finish();
}

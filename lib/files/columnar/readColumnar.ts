import { readArrow } from './arrow.ts';
import { readParquet } from './parquet.ts';
import type { StoredTable } from './storedTable.ts';

/** The table of an Arrow or a Parquet file. */
export function readColumnar(bytes: Uint8Array, format: 'arrow' | 'parquet', file: string): Promise<StoredTable> {
  return format === 'arrow' ? readArrow(bytes, file) : readParquet(bytes, file);
}

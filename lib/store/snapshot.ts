import type { ColumnInput } from '../sheet/column.ts';
import type { Readable, Writable } from './database.ts';
import { packed, unpacked } from './packed.ts';
import type { KeptTable, KeptTables, RecordHead, TableHead } from './tables.ts';

/** Every column of a table, in order of place. */
const all = (record: string, stock: string) =>
  IDBKeyRange.bound([record, stock, 0], [record, stock, Number.POSITIVE_INFINITY]);

/** A table as it was written last, without what the journal has since. */
export async function readTable(transaction: Readable, record: string, head: TableHead): Promise<KeptTable> {
  const { names, stock, ...rest } = head;
  const columns: Record<string, ColumnInput> = Object.create(null);
  const found = await transaction.objectStore('columns').getAll(all(record, stock));
  names.forEach((column, place) => {
    columns[column] = unpacked(found[place]);
  });
  return { ...rest, columns };
}

/** The tables of a record as they were written last. */
export async function readTables(transaction: Readable, record: string, { tables }: RecordHead): Promise<KeptTables> {
  const read = Object.entries(tables).map(
    async ([name, head]) => [name, await readTable(transaction, record, head)] as const,
  );
  return Object.fromEntries(await Promise.all(read));
}

/** A table that is being written: its head is for the caller to write. */
export interface Writing {
  readonly head: TableHead;
  readonly done: Promise<unknown>;
}

/**
 * Writes a table.
 * @param before  its head where it was written before: only the columns `touched` since are written again
 */
export function writeTable(
  transaction: Writable,
  record: string,
  table: KeptTable,
  before: TableHead | { readonly stock: string },
  touched: ReadonlySet<string> = new Set(Object.keys(table.columns)),
): Writing {
  const { columns, ...rest } = table;
  const { stock } = before;
  const known = 'names' in before ? before.names : [];
  const names = [...known, ...Object.keys(columns).filter((name) => touched.has(name) && !known.includes(name))];
  const store = transaction.objectStore('columns');
  const asked = names.flatMap((name, place) =>
    touched.has(name) ? store.put(packed(columns[name]), [record, stock, place]) : [],
  );
  return { head: { ...rest, names, stock }, done: Promise.all(asked) };
}

/** Takes a record's tables away. */
export function forgetTables(transaction: Writable, record: string): Promise<unknown> {
  return Promise.all([
    transaction.objectStore('heads').delete(record),
    transaction.objectStore('columns').delete(IDBKeyRange.bound([record], [record, []])),
  ]);
}

import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { PackedColumn } from './packed.ts';
import type { ByName, TableHead } from './tables.ts';

type Names = ['heads', 'columns'];

interface Schema extends DBSchema {
  /** All tables of one reader, without their columns. */
  heads: { key: string; value: ByName<TableHead> };
  /**
   * By reader, table and place. Each is small: a large entry is fetched from the page only after it was asked to be kept,
   * and a page that is being left is no longer there.
   */
  columns: { key: [reader: string, table: string, place: number]; value: PackedColumn };
}

/** The stores inside a transaction that may write. */
export type Writable = IDBPTransaction<Schema, Names, 'readwrite'>;

let opened: Promise<IDBPDatabase<Schema>> | undefined;

/** The browser's database of this notebook, opened once. */
export function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('evenhoof', 2, {
    upgrade(made) {
      for (const name of Array.from(made.objectStoreNames)) made.deleteObjectStore(name);
      made.createObjectStore('heads');
      made.createObjectStore('columns');
    },
    // Another page of a newer notebook wants to change the database: let it, and open it afresh when next asked.
    blocking: () => void close(),
    terminated: () => {
      opened = undefined;
    },
  }).catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  return opened;
}

async function close(): Promise<void> {
  const last = opened;
  opened = undefined;
  (await last)?.close();
}

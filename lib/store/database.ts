import { type DBSchema, type IDBPDatabase, type IDBPObjectStore, openDB } from 'idb';
import type { ByName, PackedTable } from './tables.ts';

interface Schema extends DBSchema {
  tables: { key: string; value: ByName<PackedTable> };
}

/** The tables' store inside a transaction that may write. */
export type Writable = IDBPObjectStore<Schema, ['tables'], 'tables', 'readwrite'>;

let opened: Promise<IDBPDatabase<Schema>> | undefined;

/** The browser's database of this notebook, opened once. */
export function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('evenhoof', 1, {
    upgrade: (made) => void made.createObjectStore('tables'),
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

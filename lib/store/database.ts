import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import { newEntryId } from './entryId.ts';
import { RECORD_VERSION } from './journal.ts';
import { type PackedColumn, packed } from './packed.ts';
import type { StoredEntry } from './storedEntry.ts';
import {
  type ByName,
  entriesOf,
  type KeptTable,
  type RecordHead,
  type RecordInfo,
  type TableHead,
  type TableName,
} from './tables.ts';

interface Schema extends DBSchema {
  /** By id. */
  records: { key: string; value: RecordInfo };
  /** What the tables of each record hold beside their columns, and how far the journal is worked into them. */
  heads: { key: string; value: RecordHead };
  /** Each is small beside its table, so that only those that have changed are written again. */
  columns: { key: [record: string, stock: string, place: number]; value: PackedColumn };
  /** The journals. The number is the lock: no two pages can write the same one. */
  entries: { key: [record: string, number: number]; value: StoredEntry };
  settings: { key: string; value: string };
}

type Names = StoreNames<Schema>[];
const STORES: Names = ['records', 'heads', 'columns', 'entries', 'settings'];

/** All stores inside a transaction that reads, or one that may write too. */
export type Readable = IDBPTransaction<Schema, Names, 'readonly' | 'readwrite'>;
export type Writable = IDBPTransaction<Schema, Names, 'readwrite'>;

let opened: Promise<IDBPDatabase<Schema>> | undefined;

/** @throws DOMException `VersionError` where a newer program has written the database: nothing in it is touched */
function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('evenhoof', RECORD_VERSION, {
    upgrade(made, before, _, transaction) {
      // All or nothing: a page that is left in the middle leaves everything as it was.
      migrate(made, before, transaction).catch(() => transaction.abort());
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

/** What can be read in one transaction. */
export async function look<Result>(work: (transaction: Readable) => Promise<Result>): Promise<Result> {
  return work((await database()).transaction(STORES) as Readable);
}

/**
 * Does work in one transaction, which is on the disk when this resolves; where any of it fails, none is done.
 * @param stores  those it needs: others can be written meanwhile
 */
export async function change<Result>(
  work: (transaction: Writable) => Promise<Result>,
  stores = STORES,
): Promise<Result> {
  const transaction = (await database()).transaction(stores, 'readwrite', { durability: 'strict' });
  const done: Promise<unknown> = transaction.done.then(
    () => undefined,
    (error: unknown) => error,
  );
  try {
    const result = await work(transaction);
    const failure = await done;
    if (failure !== undefined) throw failure;
    return result;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It is over already.
    }
    // What ended the transaction says more than that it was ended.
    throw transaction.error ?? error;
  }
}

async function close(): Promise<void> {
  const last = opened;
  opened = undefined;
  (await last)?.close();
}

/** The one record that older layouts had, and its name from now on; its owner may change it. */
const READER = 'own';
const NAME = 'My herd';

/** What layout 2 held of a table beside its columns; it marked the changed copy of an invented one. */
type OldHead = Omit<KeptTable, 'columns'> & { readonly names: readonly string[]; readonly invented?: boolean };
/** Layout 1 held tables whole. */
type OldTables = ByName<Omit<KeptTable, 'columns'> & { readonly columns: Readonly<Record<string, PackedColumn>> }>;

type Upgrade = IDBPTransaction<Schema, Names, 'versionchange'>;

/**
 * Brings the database into today's layout, whatever layout it had, and keeps everything that stood in it.
 * 1 held all tables in one value; 2 held columns apart; 3 has a journal, and records by name.
 */
async function migrate(made: IDBPDatabase<Schema>, before: number, transaction: Upgrade): Promise<void> {
  for (const name of STORES) if (!made.objectStoreNames.contains(name)) made.createObjectStore(name);
  if (before === 1) await fromWholeTables(made as unknown as IDBPDatabase, transaction);
  if (before === 1 || before === 2) await intoRecord(transaction);
}

async function fromWholeTables(made: IDBPDatabase, transaction: Upgrade): Promise<void> {
  const old = transaction as unknown as IDBPTransaction<unknown, ['tables'], 'versionchange'>;
  const whole: OldTables | undefined = await old.objectStore('tables').get(READER);
  made.deleteObjectStore('tables');
  if (!whole) return;
  const heads: Partial<Record<TableName, OldHead>> = {};
  for (const [name, table] of entriesOf(whole)) {
    const { columns, ...head } = table;
    heads[name] = { ...head, names: Object.keys(columns) };
    Object.values(columns).forEach((column, place) => {
      // A class came back without its prototype.
      const plain = 'codes' in column ? { codes: column.codes, levels: column.levels } : packed(column);
      transaction.objectStore('columns').put(plain, [READER, name, place]);
    });
  }
  await transaction.objectStore('heads').put(heads as unknown as RecordHead, READER);
}

async function intoRecord(transaction: Upgrade): Promise<void> {
  const old = (await transaction.objectStore('heads').get(READER)) as ByName<OldHead> | undefined;
  if (!old) return;
  const tables: Partial<Record<TableName, TableHead>> = {};
  // The columns stay where they are.
  for (const [name, { invented: _, ...head }] of entriesOf(old))
    tables[name] = { ...head, stock: name, opened: newEntryId() };
  const invented = old.feet?.invented ?? false;
  const info: RecordInfo = { id: READER, name: NAME, made: Date.now(), ...(invented && { invented }) };
  await Promise.all([
    transaction.objectStore('heads').put({ through: 0, counter: 0, tables, earlier: [] }, READER),
    transaction.objectStore('records').put(info, READER),
    transaction.objectStore('settings').put(READER, 'in use'),
  ]);
}

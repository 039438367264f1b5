import type { ColumnInput } from '../sheet/column.ts';
import { database, type Writable } from './database.ts';
import { forgetLeftBehind, leftBehind } from './leftBehind.ts';
import { packed, unpacked } from './packed.ts';
import type { KeptTable, KeptTables, TableHead, TableName } from './tables.ts';

const READER = 'own';
const STORES = ['heads', 'columns'] as const;

/** The tables that were kept, or `undefined` where none were. */
export async function keptTables(): Promise<KeptTables | undefined> {
  const left = leftBehind();
  if (left) {
    await keepTables(left);
    return left;
  }
  const transaction = (await database()).transaction([...STORES]);
  const heads = await transaction.objectStore('heads').get(READER);
  if (!heads) return undefined;
  const tables = Object.entries(heads).map(async ([name, { names, ...head }]: [string, TableHead]) => {
    const columns: Record<string, ColumnInput> = Object.create(null);
    const found = await transaction.objectStore('columns').getAll(all(name));
    names.forEach((column, place) => {
      columns[column] = unpacked(found[place]);
    });
    return [name, { ...head, columns }] as const;
  });
  return Object.fromEntries(await Promise.all(tables));
}

/** Keeps tables in the browser, in place of those before; resolves when they are on the disk. */
export function keepTables(tables: KeptTables): Promise<void> {
  return change((transaction) => {
    const columns = transaction.objectStore('columns');
    const heads: Partial<Record<TableName, TableHead>> = {};
    const asked: Promise<unknown>[] = [columns.clear()];
    for (const [name, table] of Object.entries(tables) as [TableName, KeptTable | undefined][]) {
      if (!table) continue;
      const { columns: kept, ...head } = table;
      heads[name] = { ...head, names: Object.keys(kept) };
      Object.values(kept).forEach((column, place) => {
        asked.push(columns.put(packed(column), [READER, name, place]));
      });
    }
    return [...asked, transaction.objectStore('heads').put(heads, READER)];
  });
}

/** Takes the kept tables out of the browser. */
export function forgetTables(): Promise<void> {
  return change((transaction) => STORES.map((name) => transaction.objectStore(name).clear()));
}

/** Every column of a table, in order of place. */
const all = (table: string) => IDBKeyRange.bound([READER, table, 0], [READER, table, Number.POSITIVE_INFINITY]);

async function change(work: (transaction: Writable) => readonly Promise<unknown>[]): Promise<void> {
  const transaction = (await database()).transaction([...STORES], 'readwrite', { durability: 'strict' });
  const asked = work(transaction);
  // Said outright: a page that is being left would not live to say it later, and nothing would be kept.
  transaction.commit();
  await Promise.all([...asked, transaction.done]);
  forgetLeftBehind();
  channel().postMessage('changed');
}

/** Calls back when another page has kept or forgotten tables. */
export function onTablesKept(changed: () => void): void {
  channel().addEventListener('message', changed);
}

let opened: BroadcastChannel | undefined;

/** One for the whole page, because a channel doesn't hear itself. */
function channel(): BroadcastChannel {
  opened ??= new BroadcastChannel('evenhoof tables');
  return opened;
}

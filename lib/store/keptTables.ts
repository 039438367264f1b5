import { database, type Writable } from './database.ts';
import type { KeptTables } from './tables.ts';

const KEY = 'own';

/** The tables that were kept, or `undefined` where none were. */
export async function keptTables(): Promise<KeptTables | undefined> {
  return (await database()).get('tables', KEY);
}

/** Keeps tables in the browser, in place of those before; resolves when they are on the disk. */
export function keepTables(tables: KeptTables): Promise<void> {
  return change((store) => store.put(tables, KEY));
}

/** Takes the kept tables out of the browser. */
export function forgetTables(): Promise<void> {
  return change((store) => store.delete(KEY));
}

async function change(work: (store: Writable) => Promise<unknown>): Promise<void> {
  const transaction = (await database()).transaction('tables', 'readwrite', { durability: 'strict' });
  await Promise.all([work(transaction.store), transaction.done]);
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

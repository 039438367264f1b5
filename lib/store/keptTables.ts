import { database, type Writable } from './database.ts';
import { packed, unpacked } from './packed.ts';
import type { ByName, KeptTables } from './tables.ts';

const KEY = 'own';

/** The tables that were kept, or `undefined` where none were. */
export async function keptTables(): Promise<KeptTables | undefined> {
  const found = await (await database()).get('tables', KEY);
  return found && mapped(found, (table) => ({ ...table, columns: unpacked(table.columns) }));
}

/** Keeps tables in the browser, in place of those before; resolves when they are on the disk. */
export function keepTables(tables: KeptTables): Promise<void> {
  const plain = mapped(tables, (table) => ({ ...table, columns: packed(table.columns) }));
  return change((store) => store.put(plain, KEY));
}

/** Takes the kept tables out of the browser. */
export function forgetTables(): Promise<void> {
  return change((store) => store.delete(KEY));
}

function mapped<From, To>(tables: ByName<From>, change: (table: From) => To): ByName<To> {
  const { feet, horses, visits } = tables;
  return {
    ...(feet && { feet: change(feet) }),
    ...(horses && { horses: change(horses) }),
    ...(visits && { visits: change(visits) }),
  };
}

async function change(work: (store: Writable) => Promise<unknown>): Promise<void> {
  const transaction = (await database()).transaction('tables', 'readwrite', { durability: 'strict' });
  const asked = work(transaction.store);
  // Said outright: a page that is being left would not live to say it later, and nothing would be kept.
  transaction.commit();
  await Promise.all([asked, transaction.done]);
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

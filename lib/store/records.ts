import { change, look } from './database.ts';
import { append, endJournal, entriesAfter } from './entries.ts';
import { newEntryId, randomName } from './entryId.ts';
import type { JournalEntry } from './journal.ts';
import { forgetLeftBehind, leftBehind } from './leftBehind.ts';
import { forgetTables, writeTable } from './snapshot.ts';
import { storedEntry } from './storedEntry.ts';
import type { KeptTable, KeptTables, RecordHead, RecordInfo, TableHead, TableName } from './tables.ts';
import { tellOthers } from './tabs.ts';

/** The reader's records, in the order in which they were begun. */
export async function listRecords(): Promise<readonly RecordInfo[]> {
  const all = await look((transaction) => transaction.objectStore('records').getAll());
  return all.sort((a, b) => a.made - b.made);
}

/** What is written down of a new record. */
export function newRecord(name: string, invented = false): RecordInfo {
  return { id: randomName(), name, made: Date.now(), ...(invented && { invented }) };
}

/**
 * Begins a record in the database, and lets it be the one in use.
 * @param entries  the journal that led to the tables, where they have one already
 */
export async function foundRecord(
  info: RecordInfo,
  tables: KeptTables,
  entries: readonly JournalEntry[] = [],
): Promise<RecordHead> {
  const counter = entries.reduce((most, entry) => Math.max(most, entry.counter), 0);
  const head = await change(async (transaction) => {
    const heads: Partial<Record<TableName, TableHead>> = {};
    const asked: Promise<unknown>[] = [];
    for (const [name, table] of Object.entries(tables) as [TableName, KeptTable][]) {
      const writing = writeTable(transaction, info.id, table, { stock: newEntryId() });
      heads[name] = writing.head;
      asked.push(writing.done);
    }
    const head: RecordHead = { through: entries.length, counter, tables: heads, earlier: [] };
    const journal = transaction.objectStore('entries');
    await Promise.all([
      ...asked,
      ...entries.map((entry, i) => journal.add(storedEntry(entry), [info.id, i + 1])),
      transaction.objectStore('heads').put(head, info.id),
      transaction.objectStore('records').put(info, info.id),
      transaction.objectStore('settings').put(info.id, 'in use'),
    ]);
    return head;
  });
  tellOthers({ kind: 'records' });
  return head;
}

export async function renameRecord(id: string, name: string): Promise<void> {
  await change(async (transaction) => {
    const records = transaction.objectStore('records');
    const info = await records.get(id);
    if (info) await records.put({ ...info, name }, id);
  });
  tellOthers({ kind: 'records' });
}

/** Takes a record off this device, journal and all. Whoever still types into it elsewhere is told that it is gone. */
export async function deleteRecord(id: string): Promise<void> {
  await change(async (transaction) => {
    await Promise.all([
      forgetTables(transaction, id),
      endJournal(transaction, id),
      transaction.objectStore('records').delete(id),
    ]);
  });
  tellOthers({ kind: 'records' });
}

/** The record that all pages show; `undefined` where it is the invented herd. */
export function recordInUse(): Promise<RecordInfo | undefined> {
  return look(async (transaction) => {
    const id = await transaction.objectStore('settings').get('in use');
    return id === undefined ? undefined : transaction.objectStore('records').get(id);
  });
}

/** Lets all pages show another record, or the invented herd. */
export async function chooseRecord(id: string | undefined): Promise<void> {
  await change(async (transaction) => {
    const settings = transaction.objectStore('settings');
    await (id === undefined ? settings.delete('in use') : settings.put(id, 'in use'));
  });
  tellOthers({ kind: 'records' });
}

/**
 * Writes what earlier pages had not written yet when they were left.
 * @param invented  the tables of a record that was a copy of the invented herd, and not begun in the database yet
 */
export async function takeLeftBehind(invented: () => Promise<KeptTables>): Promise<void> {
  for (const [page, { record, seen, entries }] of leftBehind()) {
    const known = await look((transaction) => transaction.objectStore('records').get(record.id));
    const { gone } = await look((transaction) => entriesAfter(transaction, record.id, 0));
    if (!known && !gone && record.invented) await foundRecord(record, await invented());
    if (known || (!gone && record.invented)) await writeBehind(record.id, seen, entries);
    forgetLeftBehind(page);
  }
}

async function writeBehind(record: string, seen: number, entries: readonly JournalEntry[]): Promise<void> {
  let written = false;
  while (!written) {
    const others = await look((transaction) => entriesAfter(transaction, record, seen));
    const there = new Set(others.entries.map(({ id }) => id));
    const missing = entries.filter(({ id }) => !there.has(id));
    const counter = others.entries.reduce((most, entry) => Math.max(most, entry.counter), 0);
    const behind = missing.map((entry, i) => ({ ...entry, counter: Math.max(entry.counter, counter + 1 + i) }));
    written = behind.length === 0 || (await append(record, others.last, behind));
  }
}

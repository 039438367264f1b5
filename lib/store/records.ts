import { say } from '../words/say.ts';
import { change, look } from './database.ts';
import { endJournal } from './entries.ts';
import { newEntryId } from './entryId.ts';
import type { JournalEntry } from './journal.ts';
import type { KeptPage } from './keptPage.ts';
import { RecordGone } from './notKept.ts';
import type { EarlierTable } from './recordFiles.ts';
import { forgetTables, writeTable } from './snapshot.ts';
import { storedEntry } from './storedEntry.ts';
import {
  entriesOf,
  type KeptTables,
  type RecordHead,
  type RecordInfo,
  type TableHead,
  type TableName,
} from './tables.ts';
import { tellOthers } from './tabs.ts';

/** The reader's records, in the order in which they were begun. */
export async function listRecords(): Promise<readonly RecordInfo[]> {
  const all = await look((transaction) => transaction.objectStore('records').getAll());
  return all.sort((a, b) => a.made - b.made);
}

/**
 * Begins a record in the database, and lets it be the one in use.
 * @param entries  the journal that led to the tables, where they have one already
 * @param replaced  the tables that stood there before others were opened, by the ids of these entries
 */
export async function foundRecord(
  info: RecordInfo,
  tables: KeptTables,
  entries: readonly JournalEntry[] = [],
  replaced: readonly EarlierTable[] = [],
): Promise<RecordHead> {
  const counter = entries.reduce((most, entry) => Math.max(most, entry.counter), 0);
  const head = await change(async (transaction) => {
    const heads: Partial<Record<TableName, TableHead>> = {};
    const asked: Promise<unknown>[] = [];
    for (const [name, table] of entriesOf(tables)) {
      const writing = writeTable(transaction, info.id, table, { stock: newEntryId() });
      heads[name] = writing.head;
      asked.push(writing.done);
    }
    const earlier = replaced.map(({ opening, table, kept }) => {
      const writing = writeTable(transaction, info.id, kept, { stock: newEntryId() });
      asked.push(writing.done);
      return { until: entries.findIndex(({ id }) => id === opening) + 1, table, head: writing.head };
    });
    const head: RecordHead = { through: entries.length, counter, tables: heads, earlier };
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

/** Calls a record by another name, on every page. */
export async function renameRecord(id: string, name: string): Promise<void> {
  await change(async (transaction) => {
    const records = transaction.objectStore('records');
    const info = await records.get(id);
    if (info) await records.put({ ...info, name }, id);
  });
  tellOthers({ kind: 'records' });
}

/**
 * Changes the pages that are kept in a record, as they then stand, on every page of the notebook.
 * @throws RecordGone where another page of the notebook has deleted it
 */
export async function changePages(
  id: string,
  made: (pages: readonly KeptPage[]) => readonly KeptPage[],
): Promise<void> {
  await change(
    async (transaction) => {
      const records = transaction.objectStore('records');
      const info = await records.get(id);
      if (!info) throw new RecordGone(say`this record was deleted in another tab`);
      const { pages: before = [], ...rest } = info;
      const pages = made(before);
      await records.put(pages.length > 0 ? { ...rest, pages } : rest, id);
    },
    ['records'],
  );
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

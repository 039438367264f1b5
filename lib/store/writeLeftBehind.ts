import { look } from './database.ts';
import { append, entriesAfter } from './entries.ts';
import type { JournalEntry } from './journal.ts';
import { forgetLeftBehind, leftBehind } from './leftBehind.ts';
import { foundRecord } from './records.ts';
import type { KeptTables } from './tables.ts';

/**
 * Writes what earlier pages had not written yet when they were left.
 * @param invented  the tables of a record that was a copy of the invented herd, and not begun in the database yet
 */
export async function writeLeftBehind(invented: () => Promise<KeptTables>): Promise<void> {
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

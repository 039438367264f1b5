import { change, look, type Readable, type Writable } from './database.ts';
import { inOrder, type JournalEntry } from './journal.ts';
import { type StoredEntry, soundEntry, storedEntry } from './storedEntry.ts';

/** A stretch of a record's journal as it was written. */
export interface Stretch {
  /** The entries that can be read, with their numbers. */
  readonly entries: readonly (JournalEntry & { readonly number: number })[];
  /** The numbers of those that can't: they stay where they are and are left out. */
  readonly broken: readonly number[];
  /** The number of the last one of all. */
  readonly last: number;
  /** Whether one of them came with whole tables, so that the tables have to be read afresh. */
  readonly whole: boolean;
  /** Whether the record was deleted. */
  readonly gone: boolean;
}

const from = (record: string, after: number) =>
  IDBKeyRange.bound([record, after], [record, Number.POSITIVE_INFINITY], true);

/** The entries after the one of a number. */
export async function entriesAfter(transaction: Readable, record: string, after: number): Promise<Stretch> {
  const store = transaction.objectStore('entries');
  const [keys, found] = await Promise.all([store.getAllKeys(from(record, after)), store.getAll(from(record, after))]);
  const entries: (JournalEntry & { number: number })[] = [];
  const broken: number[] = [];
  found.forEach((stored, i) => {
    const number = keys[i][1];
    const entry = soundEntry(stored);
    if (entry) entries.push({ ...entry, number });
    else if (!isGone(stored)) broken.push(number);
  });
  return {
    entries,
    broken,
    last: keys.at(-1)?.[1] ?? after,
    whole: found.some((stored) => 'whole' in stored),
    gone: found.some(isGone),
  };
}

const isGone = (stored: StoredEntry) => stored !== null && typeof stored === 'object' && 'gone' in stored;

/** The whole journal of a record, what happened first first. */
export async function journalOf(record: string): Promise<readonly (JournalEntry & { readonly number: number })[]> {
  const { entries } = await look((transaction) => entriesAfter(transaction, record, 0));
  return entries.toSorted(inOrder);
}

/**
 * Writes entries behind the one of a number.
 * @param more  what else belongs to the same change: then the tables are written whole
 * @returns false where another page has written there in the meantime; nothing is written then
 */
export async function append(
  record: string,
  after: number,
  entries: readonly JournalEntry[],
  more?: (transaction: Writable) => Promise<unknown>,
): Promise<boolean> {
  try {
    await change(
      async (transaction) => {
        const store = transaction.objectStore('entries');
        const whole = more !== undefined;
        const asked = entries.map((entry, i) => store.add(storedEntry(entry, whole), [record, after + 1 + i]));
        if (more) await Promise.all([...asked, more(transaction)]);
        else {
          // Said outright: a page that is being left would not live to say it later.
          transaction.commit();
          await Promise.all(asked);
        }
      },
      more ? undefined : ['entries'],
    );
    return true;
  } catch (error) {
    if (error instanceof DOMException && error.name === 'ConstraintError') return false;
    throw error;
  }
}

/** Takes a journal away, and leaves a mark that no page can write over. */
export async function endJournal(transaction: Writable, record: string): Promise<void> {
  const store = transaction.objectStore('entries');
  const last = (await store.getAllKeys(from(record, 0))).at(-1)?.[1] ?? 0;
  await Promise.all([store.delete(from(record, 0)), store.put({ gone: true }, [record, last + 1])]);
}

import type { JournalEntry } from './journal.ts';

/** An entry as the database holds it. */
export type StoredEntry =
  | {
      readonly entry: JournalEntry;
      /** Tells whether the entry is still as it was written. */
      readonly sum: number;
      /** The tables were written whole with it: it can't be worked into those before. */
      readonly whole?: boolean;
    }
  /** The end of a record that was deleted. */
  | { readonly gone: true };

export function storedEntry(entry: JournalEntry, whole = false): StoredEntry {
  return { entry, sum: sumOf(entry), ...(whole && { whole }) };
}

/** The entry, where it is still as it was written; `undefined` where it can't be trusted. */
export function soundEntry(stored: StoredEntry): JournalEntry | undefined {
  try {
    return 'entry' in stored && sumOf(stored.entry) === stored.sum ? stored.entry : undefined;
  } catch {
    return undefined;
  }
}

/** A checksum by Fowler, Noll and Vo, of 32 bits (FNV-1a; RFC 9923). */
function sumOf(entry: JournalEntry): number {
  const text = JSON.stringify(entry);
  let sum = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193);
  return sum >>> 0;
}

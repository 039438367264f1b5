import { leftBehind } from './leftBehind.ts';
import type { OpenRecord } from './openRecord.ts';
import type { KeptTables, RecordInfo } from './tables.ts';

// Who looks at the invented herd only needs none of this: it is fetched where there is a record of one's own, or typing.

/** A record out of the database, the journal worked in; `undefined` where it isn't there any more. */
export async function openRecord(info: RecordInfo): Promise<OpenRecord | undefined> {
  const { OpenRecord } = await import('./openRecord.ts');
  return OpenRecord.open(info);
}

/** Tables that become a record of their own with the first change. */
export async function unwrittenRecord(info: RecordInfo, tables: KeptTables): Promise<OpenRecord> {
  const { OpenRecord } = await import('./openRecord.ts');
  return OpenRecord.unwritten(info, tables);
}

/**
 * Writes what earlier pages had not written yet when they were left.
 * @param invented  the tables of a record that was a copy of the invented herd, and not begun in the database yet
 */
export async function takeLeftBehind(invented: () => Promise<KeptTables>): Promise<void> {
  if (leftBehind().length === 0) return;
  const { writeLeftBehind } = await import('./writeLeftBehind.ts');
  await writeLeftBehind(invented);
}

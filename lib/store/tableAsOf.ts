import { look } from './database.ts';
import { journalOf } from './entries.ts';
import { undone } from './journal.ts';
import type { OpenRecord } from './openRecord.ts';
import { readTable } from './snapshot.ts';
import { TableRecord } from './tableRecord.ts';
import type { KeptTable, TableName } from './tables.ts';

/**
 * A table of a record as it stood at a moment: after the last change whose clock said so, with all that was known then.
 * @param until  in milliseconds since 1970-01-01 UTC
 * @returns `undefined` where there was no such table yet
 */
export async function tableAsOf(record: OpenRecord, name: TableName, until: number): Promise<KeptTable | undefined> {
  await record.settled();
  const now = record.tables()[name];
  const journal = await journalOf(record.info.id);
  const known = journal.findLastIndex(({ at }) => at <= until) + 1;
  const since = journal.slice(known).filter(({ table }) => table === name);
  const opening = since.findIndex(({ edits }) => edits.some(({ kind }) => kind === 'opened'));
  const table = opening < 0 ? now : await earlierTable(record.info.id, name, since[opening].number);
  if (!table) return undefined;
  const edits = since.slice(0, opening < 0 ? since.length : opening).flatMap((entry) => entry.edits);
  const then = new TableRecord(name, table);
  then.meet([{ id: '', words: '', edits: edits.map(undone).reverse() }], []);
  return then.table();
}

/** The table that stood before the one that an entry opened. */
function earlierTable(record: string, name: TableName, opening: number): Promise<KeptTable | undefined> {
  return look(async (transaction) => {
    const head = await transaction.objectStore('heads').get(record);
    const earlier = head?.earlier.find(({ until, table }) => until === opening && table === name);
    return earlier && readTable(transaction, record, earlier.head);
  });
}

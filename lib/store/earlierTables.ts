import { look } from './database.ts';
import { journalOf } from './entries.ts';
import type { EarlierTable } from './recordFiles.ts';
import { readTable } from './snapshot.ts';

/** The tables of a record that were replaced by opening others, in order: with them its history can be saved whole. */
export async function earlierTables(record: string): Promise<readonly EarlierTable[]> {
  const journal = await journalOf(record);
  const idOf = new Map(journal.map(({ number, id }) => [number, id]));
  return look(async (transaction) => {
    const head = await transaction.objectStore('heads').get(record);
    const found = (head?.earlier ?? []).map(async ({ until, table, head }): Promise<EarlierTable[]> => {
      const opening = idOf.get(until);
      return opening === undefined ? [] : [{ opening, table, kept: await readTable(transaction, record, head) }];
    });
    return (await Promise.all(found)).flat();
  });
}

import { change, look } from './database.ts';
import { randomName } from './entryId.ts';
import type { RecordInfo } from './tables.ts';
import { tellOthers } from './tabs.ts';

/** What is written down of a new record. */
export function newRecord(name: string, invented = false): RecordInfo {
  return { id: randomName(), name, made: Date.now(), ...(invented && { invented }) };
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

import { change, look } from './database.ts';
import { randomName } from './entryId.ts';

/** What the database remembers of this device, each by its own name. */
export type Setting = 'device' | 'who' | 'in use' | 'asked to stay';

/** What is remembered under a name; `undefined` where nothing is. */
export function setting(name: Setting): Promise<string | undefined> {
  return look((transaction) => transaction.objectStore('settings').get(name));
}

/** Remembers something, in place of what was remembered before. */
export async function putSetting(name: Setting, value: string): Promise<void> {
  await change((transaction) => transaction.objectStore('settings').put(value, name), ['settings']);
}

/** This device's own name, made up when first asked for. */
export async function deviceName(): Promise<string> {
  return change(
    async (transaction) => {
      const store = transaction.objectStore('settings');
      const known = await store.get('device');
      const name = known ?? randomName();
      if (known === undefined) await store.put(name, 'device');
      return name;
    },
    ['settings'],
  );
}

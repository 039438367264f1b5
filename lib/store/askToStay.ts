import { putSetting, setting } from './settings.ts';

let asked = false;

/** Asks the browser, once on each device, to keep the records even where room gets scarce. */
export async function askToStay(): Promise<void> {
  const storage = globalThis.navigator?.storage;
  if (asked || typeof storage?.persist !== 'function') return;
  asked = true;
  if ((await setting('asked to stay')) !== undefined) return;
  await putSetting('asked to stay', 'yes');
  // The answer changes nothing here, and someone may take long to give it.
  void storage.persist().catch(() => {});
}

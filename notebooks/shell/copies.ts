import { type Signal, signal } from '@preact/signals';
import {
  type CopyTimes,
  chooseFolder,
  copyReminder,
  earlierTables,
  forgetFolder,
  isoFromDays,
  journalOf,
  type KeptFolderHandle,
  keepFolder,
  keptFolder,
  type OpenRecord,
  RecordFolder,
  saveFile,
  type WholeRecord,
  writeRecordZip,
} from '../../lib/index.ts';
import { keptPages } from './inUse.ts';
import { photographFiles } from './photographs.ts';

/** How the folder of the record in use stands. */
export type FolderState =
  | { readonly kind: 'none' }
  /** The browser wants to be asked again before it is written in. */
  | { readonly kind: 'waiting'; readonly name: string }
  | { readonly kind: 'writing' | 'up to date'; readonly name: string }
  | { readonly kind: 'trouble'; readonly name: string; readonly why: string };

export const folderState: Signal<FolderState> = signal({ kind: 'none' });

const copiedKey = (record: OpenRecord) => `evenhoof copied ${record.info.id}`;

/** A record with its journal as it stands on the disk. */
async function wholeRecord(record: OpenRecord, photographs = false): Promise<WholeRecord> {
  await record.settled();
  const entries = record.written ? await journalOf(record.info.id) : [];
  const journal = entries.map(({ number: _, ...entry }) => entry);
  const photos = photographs ? await photographFiles() : new Map();
  const earlier = record.written ? await earlierTables(record.info.id) : [];
  return {
    ...{ name: record.info.name, tables: record.tables(), journal },
    ...(earlier.length > 0 && { earlier }),
    ...(keptPages.value.length > 0 && { pages: keptPages.value }),
    ...(photos.size > 0 && { photographs: photos }),
  };
}

/** Hands the whole record to the browser to save, as one zip. @returns the file's name */
export async function saveCopy(record: OpenRecord, photographs: boolean): Promise<string> {
  const zip = await writeRecordZip(await wholeRecord(record, photographs));
  const today = isoFromDays(Math.floor(Date.now() / 86_400_000));
  const name = record.info.name.replace(/[^\p{L}\p{N} _-]+/gu, '').trim() || 'record';
  const file = `${name.slice(0, 60)} ${today}.zip`;
  saveFile(file, 'application/zip', zip);
  remember(record);
  return file;
}

/** The quiet line about copies of the record; `undefined` where there is nothing to say. */
export async function reminder(record: OpenRecord): Promise<string | undefined> {
  if (record.info.invented || !record.written) return undefined;
  const entries = await journalOf(record.info.id);
  const begun = record.info.made;
  const times: CopyTimes = { begun, changed: entries.at(-1)?.at ?? begun, copied: copiedAt(record) };
  return copyReminder(times, Date.now());
}

function copiedAt(record: OpenRecord): number | undefined {
  try {
    const kept = Number(localStorage.getItem(copiedKey(record)) ?? Number.NaN);
    return Number.isNaN(kept) ? undefined : kept;
  } catch {
    return undefined;
  }
}

function remember(record: OpenRecord): void {
  try {
    localStorage.setItem(copiedKey(record), String(Date.now()));
  } catch {
    // Where nothing can be kept nobody is reminded.
  }
}

/** How long after the last change the folder is written. */
const REST_MS = 2000;
let kept: { readonly record: OpenRecord; readonly folder: RecordFolder; readonly end: () => void } | undefined;

/** Lets the user choose the folder that is kept up to date with the record from now on. */
export async function chooseRecordFolder(record: OpenRecord): Promise<void> {
  const handle = await chooseFolder();
  if (!handle) return;
  await keepFolder(record.info.id, handle);
  follow(record, handle);
}

/** Goes on with the folder that an earlier page was given, where the browser still allows it. */
export async function resumeFolder(record: OpenRecord): Promise<void> {
  if (kept?.record === record) return;
  kept?.end();
  folderState.value = { kind: 'none' };
  const handle = await keptFolder(record.info.id);
  if (!handle) return;
  if ((await handle.queryPermission?.({ mode: 'readwrite' })) === 'granted') follow(record, handle);
  else folderState.value = { kind: 'waiting', name: handle.name };
}

/** Asks the browser to be allowed again; it does so only where the user has just pressed a button. */
export async function allowFolder(record: OpenRecord): Promise<void> {
  const handle = await keptFolder(record.info.id);
  if (handle && (await asked(handle)) === 'granted') follow(record, handle);
}

const asked = (handle: KeptFolderHandle) => handle.requestPermission?.({ mode: 'readwrite' }) ?? 'denied';

/** The folder is kept up to date no longer. What lies in it stays there. */
export async function leaveFolder(record: OpenRecord): Promise<void> {
  kept?.end();
  folderState.value = { kind: 'none' };
  await forgetFolder(record.info.id);
}

function follow(record: OpenRecord, handle: KeptFolderHandle): void {
  kept?.end();
  const folder = new RecordFolder(handle);
  const { name } = handle;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const write = async () => {
    folderState.value = { kind: 'writing', name };
    try {
      await folder.keep(await wholeRecord(record));
      remember(record);
      if (kept?.folder === folder) folderState.value = { kind: 'up to date', name };
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      if (kept?.folder === folder) folderState.value = { kind: 'trouble', name, why };
    }
  };
  const changed = () => {
    clearTimeout(timer);
    timer = setTimeout(write, REST_MS);
  };
  const deaf = [record.subscribe(changed), keptPages.subscribe(changed)];
  const end = () => {
    clearTimeout(timer);
    for (const stop of deaf) stop();
    kept = undefined;
  };
  kept = { record, folder, end };
  write();
}

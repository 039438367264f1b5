import { say } from '../words/say.ts';
import type { FolderHandle } from './recordFolder.ts';

const NAME = 'evenhoof folders';
const FOLDERS = 'folders';

/** A folder as the browser lets it be kept: it may have to ask its user again before the folder is written in. */
export interface KeptFolderHandle extends FolderHandle {
  queryPermission?(how: { mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission?(how: { mode: 'readwrite' }): Promise<PermissionState>;
}

/** The folder that a record is kept in; `undefined` where there is none. */
export function keptFolder(record: string): Promise<KeptFolderHandle | undefined> {
  return inFolders('readonly', (folders) => folders.get(record));
}

/** Remembers a record's folder, for the next page. */
export async function keepFolder(record: string, folder: FolderHandle): Promise<void> {
  await inFolders('readwrite', (folders) => folders.put(folder, record));
}

/** Forgets it; what lies in it stays there. */
export async function forgetFolder(record: string): Promise<void> {
  await inFolders('readwrite', (folders) => folders.delete(record));
}

async function inFolders<Result>(
  mode: IDBTransactionMode,
  work: (folders: IDBObjectStore) => IDBRequest,
): Promise<Result> {
  const made = await new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(FOLDERS);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  try {
    const transaction = made.transaction(FOLDERS, mode);
    const request = work(transaction.objectStore(FOLDERS));
    await new Promise<void>((resolve, reject) => {
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error(say`The browser gave up keeping the folder`));
    });
    return request.result;
  } finally {
    // Open, it would be in the way of a newer notebook.
    made.close();
  }
}

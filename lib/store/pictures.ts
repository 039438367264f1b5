import { say } from '../words/say.ts';
/** What is kept of a picture beside its pixels: plain data, small, and known by the picture's name. */
export interface PictureEntry {
  readonly photo: string;
}

const NAME = 'evenhoof pictures';
const ENTRIES = 'entries';
const PICTURES = 'pictures';

/**
 * Pictures and what is known of them, in a database of their own: a record is small and written often, a photograph is
 * neither. Names are `photo`; what is kept again under a name takes the place of what was there.
 */
export async function keptPictures<Entry extends PictureEntry>(): Promise<readonly Entry[]> {
  return inOne<readonly Entry[]>(ENTRIES, 'readonly', (stores) => stores(ENTRIES).getAll());
}

/** The pixels of a picture; `undefined` where none are kept under the name. */
export async function keptPicture(photo: string): Promise<Blob | undefined> {
  const kept = await inOne<{ bytes: ArrayBuffer; type: string } | undefined>(PICTURES, 'readonly', (stores) =>
    stores(PICTURES).get(photo),
  );
  return kept && new Blob([kept.bytes], { type: kept.type });
}

/** Keeps what is known of a picture, and its pixels where they are handed in; resolves when both are on the disk. */
export async function keepPicture<Entry extends PictureEntry>(entry: Entry, picture?: Blob): Promise<void> {
  // Bytes and not the blob: some browsers lose blobs that they keep.
  const pixels = picture && { bytes: await picture.arrayBuffer(), type: picture.type };
  await inOne([ENTRIES, PICTURES], 'readwrite', (stores) => {
    if (pixels) stores(PICTURES).put(pixels, entry.photo);
    return stores(ENTRIES).put(entry, entry.photo);
  });
}

/** Takes a picture and all that is known of it off the device. */
export async function forgetPicture(photo: string): Promise<void> {
  await inOne([ENTRIES, PICTURES], 'readwrite', (stores) => {
    stores(PICTURES).delete(photo);
    return stores(ENTRIES).delete(photo);
  });
}

async function inOne<Result>(
  names: string | string[],
  mode: IDBTransactionMode,
  work: (store: (name: string) => IDBObjectStore) => IDBRequest,
): Promise<Result> {
  const transaction = (await database()).transaction(names, mode);
  const request = work((name) => transaction.objectStore(name));
  await new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error ?? new Error(say`The browser gave up keeping the picture`));
    // Said outright, so that a page that is being left has it on its way.
    if (mode === 'readwrite') transaction.commit();
  });
  return request.result;
}

let opened: Promise<IDBDatabase> | undefined;

/** Opened once and kept open: a page that is being left has no time to open it. */
function database(): Promise<IDBDatabase> {
  opened ??= new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      for (const name of [ENTRIES, PICTURES]) request.result.createObjectStore(name);
    };
    request.onsuccess = () => {
      const made = request.result;
      // Open, it would be in the way of a newer notebook.
      made.onversionchange = () => {
        opened = undefined;
        made.close();
      };
      made.onclose = () => {
        opened = undefined;
      };
      resolve(made);
    };
    request.onerror = () => {
      opened = undefined;
      reject(request.error);
    };
  });
  return opened;
}

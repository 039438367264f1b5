import { recordFiles, type WholeRecord } from './recordFiles.ts';

/** What is used of a folder that the browser was given by its user. */
export interface FolderHandle {
  readonly name: string;
  getFileHandle(name: string, options: { create: true }): Promise<FileHandle>;
  getDirectoryHandle(name: string, options: { create: true }): Promise<FolderHandle>;
}

interface FileHandle {
  createWritable(): Promise<{ write(bytes: Uint8Array): Promise<void>; close(): Promise<void> }>;
}

/** Whether this browser can be given a folder to write in. */
export function canKeepFolder(): boolean {
  return 'showDirectoryPicker' in globalThis;
}

/** Asks the user for a folder; `undefined` where none was chosen. */
export async function chooseFolder(): Promise<FolderHandle | undefined> {
  try {
    return await (globalThis as unknown as FolderPicker).showDirectoryPicker({ id: 'evenhoof', mode: 'readwrite' });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return undefined;
    throw error;
  }
}

interface FolderPicker {
  showDirectoryPicker(options: { id: string; mode: 'readwrite' }): Promise<FolderHandle>;
}

/** A folder on the disk that holds a record's files, the same as in its zip. Only what has changed is written. */
export class RecordFolder {
  readonly #handle: FolderHandle;
  readonly #written = new Map<string, Uint8Array>();
  #work: Promise<unknown> = Promise.resolve();
  #latest: WholeRecord | undefined;

  constructor(handle: FolderHandle) {
    this.#handle = handle;
  }

  get name(): string {
    return this.#handle.name;
  }

  /**
   * Brings the folder up to date; where it is asked several times meanwhile, with the last record only.
   * @returns how many files were written
   * @throws what the browser throws where the folder is gone or may no longer be written in
   */
  keep(record: WholeRecord): Promise<number> {
    this.#latest = record;
    const done = this.#work.then(() => this.#write());
    this.#work = done.catch(() => {});
    return done;
  }

  async #write(): Promise<number> {
    const record = this.#latest;
    if (!record) return 0;
    this.#latest = undefined;
    const changed = [...recordFiles(record)].filter(([path, bytes]) => !alike(this.#written.get(path), bytes));
    // What says how to read the others comes last: a folder that was left half written shows it.
    changed.sort(([a], [b]) => Number(a === 'record.json') - Number(b === 'record.json'));
    for (const [path, bytes] of changed) {
      await this.#put(path, bytes);
      this.#written.set(path, bytes);
    }
    return changed.length;
  }

  async #put(path: string, bytes: Uint8Array): Promise<void> {
    const slash = path.indexOf('/');
    const folder =
      slash < 0 ? this.#handle : await this.#handle.getDirectoryHandle(path.slice(0, slash), { create: true });
    const file = await folder.getFileHandle(path.slice(slash + 1), { create: true });
    const writable = await file.createWritable();
    await writable.write(bytes);
    await writable.close();
  }
}

function alike(a: Uint8Array | undefined, b: Uint8Array): boolean {
  return a?.length === b.length && a.every((byte, i) => byte === b[i]);
}

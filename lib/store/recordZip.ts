import { zipped } from '../files/zipped.ts';
import { say } from '../words/say.ts';
import { RecordError, recordFiles, recordOfFiles, type WholeRecord } from './recordFiles.ts';

/** More than any record unpacks to, and less than would fill a device's memory. */
const MOST_BYTES = 1 << 30;

/**
 * A whole record as one zip. The same record gives the same bytes, whenever and wherever it is written.
 * @example await readRecordZip(await writeRecordZip(record)) // the record
 */
export async function writeRecordZip(record: WholeRecord): Promise<Uint8Array> {
  return zipped(recordFiles(record), (path) => path.startsWith('photographs/'));
}

/**
 * Reads a record back from its zip, also where the files were packed again inside a folder.
 * @returns `undefined` for a zip that holds no record
 * @throws RecordError where it is broken, too large, or a newer program wrote it
 */
export async function readRecordZip(zip: Uint8Array): Promise<WholeRecord | undefined> {
  const { unzipSync } = await import('fflate');
  const files = new Map<string, Uint8Array>();
  let size = 0;
  try {
    const found = unzipSync(zip, {
      filter: ({ name, originalSize }) => {
        size += originalSize;
        if (size > MOST_BYTES) throw new RecordError(say`What is packed in this file is too large for a record`);
        return !name.endsWith('/');
      },
    });
    for (const [path, bytes] of Object.entries(found)) files.set(path, bytes);
  } catch (error) {
    if (error instanceof RecordError) throw error;
    throw new RecordError(say`This zip is broken and could not be unpacked. Take an untouched copy`);
  }
  const root = [...files.keys()]
    .filter((path) => /(^|\/)record\.json$/.test(path))
    .sort((a, b) => a.length - b.length)[0];
  if (root === undefined) return undefined;
  const folder = root.slice(0, -'record.json'.length);
  const inside = [...files].filter(([path]) => path.startsWith(folder));
  return recordOfFiles(new Map(inside.map(([path, bytes]) => [path.slice(folder.length), bytes])));
}

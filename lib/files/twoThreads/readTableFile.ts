import { closeSync, openSync, readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { columnarFormat, csvOf } from '../csvOf.ts';
import { decode } from '../decode.ts';
import { type ReadOptions, readTable, readTableBy, type TableRead } from '../readTable.ts';
import { bytesAt } from './filePart.ts';
import type { Helper } from './helper.ts';
import { NotInPieces } from './pieces.ts';
import { readingHelper } from './readingHelper.ts';
import { rowsByTwo } from './rowsByTwo.ts';

const LF = 10;
/** In which the headings lie, and rows enough to tell what the columns hold. */
const headBytes = 2 ** 18;
/** From here on a second thread is worth its coming; the processor's cache holds a piece and what is made of it. */
const usual: Manner = { least: 2 ** 23, piece: 2 ** 19, helper: readingHelper };

/** How a file is read in pieces. */
export interface Manner {
  /** Bytes of a file that is worth it. */
  readonly least: number;
  /** Bytes that are read at once. */
  readonly piece: number;
  readonly helper: () => Helper;
}

/**
 * Reads a table from a file as `readTable` does from its bytes; CSV of many megabytes by two threads, half each, and then
 * the columns lie in shared memory. Parquet and Arrow are read as well. Node only.
 * @param path  of CSV, Parquet or Arrow
 * @param options  as for `readTable`; the file's name in problems is its own where none is given
 * @throws Error of the system where the file can't be read; StoredTableError where it is broken Parquet or Arrow
 * @example (await readTableFile('feet.csv')).columns.toe_angle_deg.values
 */
export async function readTableFile(path: string, options: ReadOptions = {}): Promise<TableRead> {
  const named = { file: basename(path), ...options };
  return readInPieces(path, named, usual) ?? readTable(await csvOf(readFileSync(path), named.file), named);
}

/** Reads a large file without holding it in memory; `undefined` where that can't be done. */
export function readInPieces(
  path: string,
  options: ReadOptions,
  { least, piece, helper }: Manner,
): TableRead | undefined {
  const status = statSync(path);
  if (!status.isFile() || status.size < least) return undefined;
  const file = openSync(path, 'r');
  try {
    const whole = { file, from: 0, to: status.size, piece };
    const room = new Uint8Array(Math.min(headBytes, whole.to));
    const head = room.subarray(0, bytesAt(file, room, 0)).subarray(0, room.lastIndexOf(LF) + 1);
    if (head.length === 0 || columnarFormat(head) !== undefined || decode(head).encoding !== 'utf-8') return undefined;
    const read = readTableBy(rowsByTwo(whole, helper(), least / 2), head, options);
    // Where a quote is not closed in a piece, another may close it further on.
    return read.problems.some(({ code }) => code === 'broken-quotes') ? undefined : read;
  } catch (error) {
    if (error instanceof NotInPieces) return undefined;
    throw error;
  } finally {
    closeSync(file);
  }
}

import { readSync } from 'node:fs';

/** From one byte of an open file to before another. */
export interface FilePart {
  /** The file's number, which all threads of a process share. */
  readonly file: number;
  readonly from: number;
  readonly to: number;
  /** How many bytes are read at once. */
  readonly piece: number;
}

/** Fills `room` with a file's bytes from `at` on, as far as the file goes; returns how many they are. */
export function bytesAt(file: number, room: Uint8Array, at: number): number {
  let length = 0;
  while (length < room.length) {
    const read = readSync(file, room, length, room.length - length, at + length);
    if (read === 0) break;
    length += read;
  }
  return length;
}

import { readRows } from '../readRows.ts';
import type { Layout, PartRead } from '../rowReader.ts';
import { bytesAt, type FilePart } from './filePart.ts';
import type { Helper } from './helper.ts';
import { NotInPieces, Pieces } from './pieces.ts';

const LF = 10;
/** Lines are counted in so many places, of so many bytes. */
const places = 64;
const bytesAPlace = 4096;

/**
 * Reads rows of a file as `readRows` does from bytes, the second half by a helper at the same time.
 * The helper begins after a line's end near the middle. Where that lies within quotes, our own last row goes past it.
 * What it returns takes the file's first bytes, in which a sample of rows lies.
 * @param least  fewer bytes are not worth a hand
 * @throws NotInPieces
 */
export function rowsByTwo(file: FilePart, helper: Helper, least: number): typeof readRows {
  return (head, start, layout, stores, limit = Number.POSITIVE_INFINITY) => {
    if (limit < Number.POSITIVE_INFINITY) {
      const sample = readRows(head, start, layout, stores, limit);
      if (sample.rows < limit) throw new NotInPieces();
      return sample;
    }
    const part = { ...file, from: start };
    const pieces = new Pieces(part, layout, stores);
    if (!helper.free) pieces.rows.resize(roomFor(part));
    // A helper that has just been called in takes a while to come.
    while (!helper.free && pieces.left > least) pieces.next();
    if (helper.free) readHalves(pieces, { ...part, from: pieces.at }, layout, helper);
    else pieces.rest();
    return pieces.rows.finish();
  };
}

function readHalves(pieces: Pieces, left: FilePart, layout: Layout, helper: Helper): void {
  const { rows } = pieces;
  const { stores } = rows;
  const middle = lineAfter(left.file, Math.floor((left.from + left.to) / 2));
  const part = { ...left, from: middle };
  const first = rows.rows + roomFor({ ...left, to: middle });
  const room = roomFor(part);
  for (const store of stores) store.share(rows.rows, first + room);
  rows.resize(first + room);
  const wait = helper.ask({
    ...{ part, layout, room },
    stores: stores.map(({ as, least, most, strict, quotesMeanText, values, codes }) => ({
      ...{ as, least, most, strict, quotesMeanText },
      ...{ values: values.subarray(first), codes: codes.subarray(first) },
    })),
  });
  pieces.to = middle;
  let read: PartRead | undefined;
  try {
    pieces.rest(first);
  } finally {
    read = wait();
  }
  if (read === undefined) throw new NotInPieces();
  rows.append(read, first);
}

/** Where a line begins, soon after that place. */
function lineAfter(file: number, place: number): number {
  const bytes = new Uint8Array(2 ** 16);
  const end = bytes.subarray(0, bytesAt(file, bytes, place)).indexOf(LF);
  if (end < 0) throw new NotInPieces();
  return place + end + 1;
}

/** For how many rows there must be room: hardly more than there are lines, which are counted here and there. */
function roomFor({ file, from, to }: FilePart): number {
  const bytes = new Uint8Array(bytesAPlace);
  const step = Math.max((to - from) / places, bytesAPlace);
  let lines = 0;
  let seen = 0;
  for (let place = from; place < to; place += step) {
    const read = bytesAt(file, bytes.subarray(0, Math.min(bytesAPlace, Math.ceil(to - place))), Math.floor(place));
    for (let at = 0; at < read; at++) if (bytes[at] === LF) lines++;
    seen += read;
  }
  return Math.ceil((lines / Math.max(seen, 1)) * (to - from) * 1.01) + 64;
}

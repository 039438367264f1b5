import type { CellStore } from '../cellStore.ts';
import { isUtf8 } from '../decode.ts';
import { type Layout, RowReader } from '../rowReader.ts';
import { bytesAt, type FilePart } from './filePart.ts';

const LF = 10;
/** As much as a reader looks ahead. */
const beyond = 8;

/**
 * The file has to be read as a whole: it is not UTF-8, a quoted cell goes beyond a piece, a line is longer than one, or
 * there are more rows than a count of lines here and there led to expect.
 */
export class NotInPieces extends Error {}

/** Reads the rows of a part of a file a piece at a time, all into the same memory: fresh memory costs more than reading. */
export class Pieces {
  readonly rows: RowReader;
  /** How much of the file has been read. */
  at: number;
  to: number;
  readonly #part: FilePart;
  readonly #bytes: Uint8Array;
  /** How many bytes of a row that is not whole lie at the beginning. */
  #held = 0;

  constructor(part: FilePart, layout: Layout, stores: readonly CellStore[]) {
    this.#part = part;
    this.#bytes = new Uint8Array(2 * part.piece + beyond);
    // Whatever lies in between, a reader that goes past a piece comes to an end.
    this.#bytes.fill(LF, -1);
    this.at = part.from;
    this.to = part.to;
    this.rows = new RowReader(this.#bytes, 0, layout, stores);
  }

  get left(): number {
    return this.to - this.at;
  }

  /**
   * Reads the rows of one more piece; the last line of the part may lack its end.
   * @param most  how many rows there may be in all
   * @throws NotInPieces
   */
  next(most = this.rows.capacity): void {
    const { rows } = this;
    const { file, piece } = this.#part;
    const bytes = this.#bytes;
    const wanted = Math.min(this.left, piece);
    const read = bytesAt(file, bytes.subarray(this.#held, this.#held + wanted), this.at);
    if (read < wanted) throw new NotInPieces();
    this.at += read;
    let length = this.#held + read;
    if (this.left === 0 && bytes[length - 1] !== LF) bytes[length++] = LF;
    const end = bytes.lastIndexOf(LF, length - 1) + 1;
    if (length - end > piece || !isUtf8(bytes.subarray(0, end))) throw new NotInPieces();
    rows.rewind();
    rows.readTo(end, most);
    if (rows.place !== end) throw new NotInPieces();
    bytes.copyWithin(0, end, length);
    this.#held = length - end;
  }

  /** Reads all that is left, `most` rows in all at most. */
  rest(most?: number): void {
    while (this.left > 0) this.next(most);
  }
}

import type { CellSource } from './cellSource.ts';
import type { CellStore } from './cellStore.ts';

const QUOTE = 34;

/** Of how many cells seen before the place is remembered; a power of two. */
const remembered = 16;

/** Reads the cells of a column of text, most of which were seen before, and not long ago. */
export class TextReader {
  readonly #source: CellSource;
  readonly #store: CellStore;
  readonly #column: number;
  readonly #view: DataView;
  readonly #safe: number;
  readonly #terminates: Uint8Array;
  /** By their first two letters, where the last plain cells lie and what codes they have. */
  readonly #starts = new Int32Array(remembered);
  readonly #ends = new Int32Array(remembered);
  readonly #seen = new Int32Array(remembered);
  #codes: Int32Array;

  constructor(source: CellSource, store: CellStore, column: number) {
    this.#source = source;
    this.#store = store;
    this.#column = column;
    this.#view = source.view;
    this.#safe = source.safe;
    this.#terminates = source.terminates;
    this.#codes = store.codes;
  }

  resize(rows: number): void {
    this.#store.resize(rows);
    this.#codes = this.#store.codes;
  }

  /** What was seen lies no longer where it did. */
  forget(): void {
    this.#starts.fill(0);
    this.#ends.fill(0);
  }

  /** A cell that its row does not have. */
  lack(row: number): void {
    this.#codes[row] = -1;
  }

  /** Reads the cell that begins at `p`; returns where it ends. */
  read(p: number, row: number): number {
    const view = this.#view;
    const safe = this.#safe;
    const byte = view.getUint8(p);
    if (this.#terminates[byte] === 1) {
      this.#codes[row] = -1;
      return p;
    }
    const place = (byte + 2 * view.getUint8(p + 1)) & (remembered - 1);
    const end = this.#ends[place];
    let before = this.#starts[place];
    let at = p;
    while (before + 4 <= end && at < safe && view.getInt32(before, true) === view.getInt32(at, true)) {
      before += 4;
      at += 4;
    }
    while (before < end && view.getUint8(before) === view.getUint8(at)) {
      before++;
      at++;
    }
    if (before < end || this.#terminates[view.getUint8(at)] === 0) return this.#readNew(p, row, place);
    this.#codes[row] = this.#seen[place];
    return at;
  }

  #readNew(p: number, row: number, place: number): number {
    const { bytes } = this.#source;
    const terminates = this.#terminates;
    let end = p;
    while (terminates[bytes[end]] === 0) end++;
    const first = bytes[p];
    const final = bytes[end - 1];
    if (first === QUOTE || first <= 32 || final <= 32 || first === 0xc2 || final === 0xa0) return this.#readOdd(p, row);
    const code = this.#store.texts.code(bytes, p, end);
    this.#starts[place] = p;
    this.#ends[place] = end;
    this.#seen[place] = code;
    this.#codes[row] = code;
    return end;
  }

  /** A cell that may be quoted or have blanks around it. */
  #readOdd(p: number, row: number): number {
    const { texts } = this.#store;
    const cell = this.#source.scanner;
    const end = this.#source.scan(p, row, this.#column, this.#store);
    this.#codes[row] = cell.end > cell.start ? texts.code(cell.source, cell.start, cell.end) : -1;
    return end;
  }
}

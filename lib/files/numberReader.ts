import type { CellSource } from './cellSource.ts';
import type { CellStore } from './cellStore.ts';
import { plainNumber } from './plainNumber.ts';

const COMMA = 44;
const MINUS = 45;
const ZERO = 48;

const powersOfTen = Float64Array.from({ length: 10 }, (_, exponent) => Number(`1e${exponent}`));

/** Reads the cells of a column of numbers, most of which are plain and short. */
export class NumberReader {
  readonly #source: CellSource;
  readonly #store: CellStore;
  readonly #column: number;
  readonly #view: DataView;
  readonly #safe: number;
  readonly #terminates: Uint8Array;
  readonly #least: number;
  readonly #most: number;
  /** What is left of four bytes when the digits, the mark and the digit of `dd.d` are taken off. */
  readonly #shape: number;
  #values: Float64Array;

  constructor(source: CellSource, store: CellStore, column: number) {
    this.#source = source;
    this.#store = store;
    this.#column = column;
    this.#view = source.view;
    this.#safe = source.safe;
    this.#terminates = source.terminates;
    this.#least = store.least;
    this.#most = store.most;
    this.#shape = 0x30003030 | (source.decimal << 16);
    this.#values = store.values;
  }

  resize(rows: number): void {
    this.#store.resize(rows);
    this.#values = this.#store.values;
  }

  forget(): void {}

  /** A cell that its row does not have. */
  lack(row: number): void {
    this.#values[row] = Number.NaN;
  }

  /** Reads the cell that begins at `p`; returns where it ends. */
  read(p: number, row: number): number {
    const end = p < this.#safe ? this.#readShort(p, row) : -1;
    return end >= 0 ? end : this.#readDigits(p, row);
  }

  /** Reads what looks like `52.5` or `110.5`, as most cells do; -1 for any other. */
  #readShort(p: number, row: number): number {
    const view = this.#view;
    let hundreds = 0;
    let end = p + 4;
    let word = view.getInt32(p, true) ^ this.#shape;
    if (!isShort(word)) {
      hundreds = view.getUint8(p) ^ ZERO;
      word = view.getInt32(p + 1, true) ^ this.#shape;
      if (hundreds < 1 || hundreds > 9 || !isShort(word)) return -1;
      end++;
    }
    const tenths = hundreds * 1000 + (word & 15) * 100 + ((word >> 8) & 15) * 10 + (word >>> 24);
    const value = tenths / 10;
    if (tenths < 100 || this.#terminates[view.getUint8(end)] === 0 || value < this.#least || value > this.#most)
      return -1;
    this.#values[row] = value;
    return end;
  }

  #readDigits(p: number, row: number): number {
    const { bytes, decimal } = this.#source;
    const terminates = this.#terminates;
    let byte = bytes[p];
    if (terminates[byte] === 1) {
      this.#values[row] = Number.NaN;
      return p;
    }
    // Up to nine digits fit an integer, and an integer over a power of ten is rounded once: the value is exact.
    let at = p;
    if (byte === MINUS) byte = bytes[++at];
    const digits = at;
    let whole = 0;
    for (let digit = byte ^ ZERO; digit < 10; digit = byte ^ ZERO) {
      whole = (Math.imul(whole, 10) + digit) | 0;
      byte = bytes[++at];
    }
    let count = at - digits;
    let scale = 0;
    if (byte === decimal) {
      const mark = at;
      byte = bytes[++at];
      for (let digit = byte ^ ZERO; digit < 10; digit = byte ^ ZERO) {
        whole = (Math.imul(whole, 10) + digit) | 0;
        byte = bytes[++at];
      }
      scale = at - mark - 1;
      count += scale;
    }
    if (count < 1 || count > 9 || terminates[byte] === 0) return this.#readOdd(p, row);
    if (this.#store.strict && bytes[digits] === ZERO && (bytes[digits + 1] ^ ZERO) < 10) return this.#readOdd(p, row);
    const size = whole / powersOfTen[scale];
    const value = digits === p ? size : -size;
    if (value < this.#least || value > this.#most) return this.#readOdd(p, row);
    this.#values[row] = value;
    return at;
  }

  /** A cell that is not plainly a short number within the limits: longer, quoted, or something else. */
  #readOdd(p: number, row: number): number {
    const store = this.#store;
    const { scanner: cell, decimal } = this.#source;
    const end = this.#source.scan(p, row, this.#column, store);
    this.#values[row] = Number.NaN;
    if (cell.start === cell.end) return end;
    const mark = decimal === COMMA ? ',' : '.';
    const value = cell.quoted && store.quotesMeanText ? Number.NaN : plainNumber(cell.text(), mark, store.strict);
    if (value >= store.least && value <= store.most) {
      this.#values[row] = value;
    } else {
      store.oddRows.push(row);
      store.oddCodes.push(store.texts.code(cell.source, cell.start, cell.end));
    }
    return end;
  }
}

/** Whether nothing but three digits is left of `dd.d`. A digit plus 118 does not reach the highest bit of its byte. */
function isShort(word: number): boolean {
  return ((word | (word + 0x76007676)) & 0x80ff8080) === 0;
}

import { CellScanner } from './cellScanner.ts';
import type { CellStore } from './cellStore.ts';
import { hashOf, hashPrime, hashStart } from './dictionary.ts';
import { plainNumber } from './plainNumber.ts';

const LF = 10;
const CR = 13;
const MINUS = 45;
const ZERO = 48;
const QUOTE = 34;

const NOTHING = 0;
const NUMBER = 1;
const TEXT = 2;

/** The engine makes its fastest code for a function that is called often, not for one that loops long. */
const blockRows = 512;

const powersOfTen = Float64Array.from({ length: 23 }, (_, exponent) => Number(`1e${exponent}`));

export interface Layout {
  readonly delimiter: number;
  /** The byte of the decimal mark. */
  readonly decimal: number;
  /** Whether a row of nothing but empty cells is a row. */
  readonly keepEmptyRows: boolean;
  /** A row with fewer cells is short. */
  readonly named: number;
}

export interface RowsRead {
  readonly rows: number;
  /** For each line without a row, the row (from 0) before which it stands. */
  readonly emptyLines: readonly number[];
  readonly short: { readonly count: number; readonly first: number };
  /** Text in cells beyond the last heading. */
  readonly beyond: readonly { readonly row: number; readonly text: string }[];
  /** Cells whose quotes don't add up. */
  readonly broken: readonly { readonly row: number; readonly column: number; readonly text: string }[];
}

/**
 * Reads rows of cells from bytes into one store a column: a state machine over bytes, which makes no string for a number
 * or for a text seen before. `CR`, `LF` and `CRLF` all end a row, mixed as they may be.
 * @param bytes  UTF-8 that ends with a line end, as `decode` gives it
 * @param start  where the first row after the headings begins
 * @param stores  one a column, filled here
 * @param limit  how many rows at most
 */
export function readRows(
  bytes: Uint8Array,
  start: number,
  layout: Layout,
  stores: readonly CellStore[],
  limit = Number.POSITIVE_INFINITY,
): RowsRead {
  const reader = new RowReader(bytes, start, layout, stores);
  let capacity = 0;
  while (reader.place < bytes.length && reader.rows < limit) {
    const wanted = Math.min(reader.rows + blockRows, limit);
    if (wanted > capacity) {
      const share = reader.rows === 0 ? 0 : (bytes.length - start) / (reader.place - start);
      capacity = Math.max(wanted, Math.ceil(reader.rows * share * 1.02));
      reader.resize(capacity);
    }
    reader.readBlock(wanted);
  }
  reader.resize(reader.rows);
  return reader;
}

class RowReader implements RowsRead {
  rows = 0;
  place: number;
  readonly emptyLines: number[] = [];
  readonly short = { count: 0, first: -1 };
  readonly beyond: { row: number; text: string }[] = [];
  readonly broken: { row: number; column: number; text: string }[] = [];

  readonly #bytes: Uint8Array;
  readonly #layout: Layout;
  readonly #stores: readonly CellStore[];
  readonly #scanner: CellScanner;
  readonly #terminates = new Uint8Array(256);
  readonly #kinds: Uint8Array;
  readonly #least: Float64Array;
  readonly #most: Float64Array;
  #values: Float64Array[] = [];
  #codes: Int32Array[] = [];
  /** Of each text column the last cell found by its bytes: the next is often the same. */
  readonly #lastStart: Int32Array;
  readonly #lastEnd: Int32Array;
  readonly #lastCode: Int32Array;

  constructor(bytes: Uint8Array, start: number, layout: Layout, stores: readonly CellStore[]) {
    this.#bytes = bytes;
    this.place = start;
    this.#layout = layout;
    this.#stores = stores;
    this.#scanner = new CellScanner(bytes, layout.delimiter);
    for (const byte of [layout.delimiter, LF, CR]) this.#terminates[byte] = 1;
    this.#kinds = Uint8Array.from(stores, ({ as }) => (as === 'number' ? NUMBER : as === 'text' ? TEXT : NOTHING));
    this.#least = Float64Array.from(stores, ({ least }) => least);
    this.#most = Float64Array.from(stores, ({ most }) => most);
    this.#lastStart = new Int32Array(stores.length);
    this.#lastEnd = new Int32Array(stores.length);
    this.#lastCode = new Int32Array(stores.length);
  }

  resize(rows: number): void {
    for (const store of this.#stores) store.resize(rows);
    this.#values = this.#stores.map(({ values }) => values);
    this.#codes = this.#stores.map(({ codes }) => codes);
  }

  /** Reads until there are `wanted` rows or the file ends. */
  readBlock(wanted: number): void {
    const bytes = this.#bytes;
    const length = bytes.length;
    const stores = this.#stores;
    const columns = stores.length;
    const { delimiter, decimal, keepEmptyRows, named } = this.#layout;
    const scanner = this.#scanner;
    const terminates = this.#terminates;
    const kinds = this.#kinds;
    const least = this.#least;
    const most = this.#most;
    const values = this.#values;
    const codes = this.#codes;
    const lastStart = this.#lastStart;
    const lastEnd = this.#lastEnd;
    const lastCode = this.#lastCode;

    let row = this.rows;
    let column = 0;
    let filled = false;
    let p = this.place;
    while (p < length && row < wanted) {
      const kind = column < columns ? kinds[column] : NOTHING;
      let byte = bytes[p];
      if (terminates[byte] === 1) {
        if (kind === NUMBER) values[column][row] = Number.NaN;
        else if (kind === TEXT) codes[column][row] = -1;
      } else if (kind === NUMBER) {
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
        const size = whole / powersOfTen[scale];
        const value = digits === p ? size : -size;
        if (
          count > 0 &&
          count < 10 &&
          terminates[byte] === 1 &&
          value >= least[column] &&
          value <= most[column] &&
          (bytes[digits] !== ZERO || !stores[column].strict || (bytes[digits + 1] ^ ZERO) >= 10)
        ) {
          values[column][row] = value;
          filled = true;
          p = at;
        } else {
          p = scanner.scan(p);
          byte = bytes[p];
          if (oddNumber(stores[column], row, scanner, decimal) || (scanner.quoted && columns === 1)) filled = true;
          if (scanner.broken) this.broken.push({ row, column, text: scanner.text() });
        }
      } else if (kind === TEXT) {
        const from = p;
        let last = lastStart[column];
        const end = lastEnd[column];
        while (last < end && bytes[last] === byte) {
          last++;
          byte = bytes[++p];
        }
        if (last === end && terminates[byte] === 1) {
          codes[column][row] = lastCode[column];
          filled = true;
        } else {
          byte = bytes[from];
          p = from;
          let hash = hashStart;
          while (terminates[byte] === 0) {
            hash = Math.imul(hash ^ byte, hashPrime);
            byte = bytes[++p];
          }
          const first = bytes[from];
          const final = bytes[p - 1];
          if (first === QUOTE || first <= 32 || final <= 32 || first === 0xc2 || final === 0xa0) {
            p = scanner.scan(from);
            byte = bytes[p];
            if (oddText(stores[column], row, scanner) || (scanner.quoted && columns === 1)) filled = true;
            if (scanner.broken) this.broken.push({ row, column, text: scanner.text() });
          } else {
            const code = stores[column].texts.code(bytes, from, p, hash);
            lastStart[column] = from;
            lastEnd[column] = p;
            lastCode[column] = code;
            codes[column][row] = code;
            filled = true;
          }
        }
      } else {
        p = scanner.scan(p);
        byte = bytes[p];
        if (scanner.end > scanner.start) {
          filled = true;
          if (column >= columns) this.beyond.push({ row, text: scanner.text() });
        }
      }

      p++;
      if (byte === delimiter) {
        column++;
        continue;
      }
      if (byte === CR && p < length && bytes[p] === LF) p++;
      if (filled || (column > 0 && keepEmptyRows)) {
        if (column < columns - 1) this.#fillUp(row, column + 1);
        if (column < named - 1 && this.short.count++ === 0) this.short.first = row;
        row++;
      } else this.emptyLines.push(row);
      column = 0;
      filled = false;
    }
    this.rows = row;
    this.place = p;
  }

  /** The cells that a row lacks are missing. */
  #fillUp(row: number, from: number): void {
    for (let column = from; column < this.#stores.length; column++) {
      if (this.#kinds[column] === NUMBER) this.#values[column][row] = Number.NaN;
      else if (this.#kinds[column] === TEXT) this.#codes[column][row] = -1;
    }
  }
}

/** A cell that is not plainly a short number: empty, longer, quoted, or something else. Whether it held any text. */
function oddNumber(store: CellStore, row: number, cell: CellScanner, decimal: number): boolean {
  store.values[row] = Number.NaN;
  if (cell.start === cell.end) return false;
  if (cell.quoted) store.quoted = true;
  const value =
    cell.quoted && store.quotesMeanText
      ? Number.NaN
      : plainNumber(cell.text(), decimal === 44 ? ',' : '.', store.strict);
  if (value >= store.least && value <= store.most) {
    store.values[row] = value;
  } else {
    store.oddRows.push(row);
    store.oddCodes.push(store.texts.code(cell.source, cell.start, cell.end, hashOf(cell.source, cell.start, cell.end)));
  }
  return true;
}

function oddText(store: CellStore, row: number, cell: CellScanner): boolean {
  const { source, start, end } = cell;
  const filled = end > start;
  store.codes[row] = filled ? store.texts.code(source, start, end, hashOf(source, start, end)) : -1;
  if (filled && cell.quoted) store.quoted = true;
  return filled;
}

import { CellSource } from './cellSource.ts';
import { CellStore } from './cellStore.ts';
import { NumberReader } from './numberReader.ts';
import { TextReader } from './textReader.ts';

const LF = 10;
const CR = 13;
const ZERO = 48;
const TILDE = 126;

/** The engine makes its fastest code for a function that is called often, not for one that loops long. */
const blockRows = 512;

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
  const { rows, emptyLines, short, beyond, broken } = reader;
  return { rows, emptyLines, short, beyond, broken };
}

class RowReader {
  /** The engine drops what it compiled for a class that has no instance left; with one that stays, only the first file is slow. */
  static readonly kept = new RowReader(
    new Uint8Array(0),
    0,
    { delimiter: 0, decimal: 0, keepEmptyRows: false, named: 0 },
    [new CellStore('number'), new CellStore('text')],
  );

  rows = 0;
  place: number;
  readonly emptyLines: number[] = [];
  readonly short = { count: 0, first: -1 };
  readonly beyond: { row: number; text: string }[] = [];
  readonly broken: RowsRead['broken'];
  readonly #layout: Layout;
  readonly #source: CellSource;
  readonly #readers: readonly (NumberReader | TextReader | PassingReader)[];

  constructor(bytes: Uint8Array, start: number, layout: Layout, stores: readonly CellStore[]) {
    const source = new CellSource(bytes, layout.delimiter, layout.decimal);
    this.place = start;
    this.broken = source.broken;
    this.#layout = layout;
    this.#source = source;
    this.#readers = stores.map((store, column) => readerFor(source, store, column));
  }

  resize(rows: number): void {
    for (const reader of this.#readers) reader.resize(rows);
  }

  /** Reads until there are `wanted` rows or the file ends. */
  readBlock(wanted: number): void {
    const { bytes } = this.#source;
    const { delimiter } = this.#layout;
    const readers = this.#readers;
    const columns = readers.length;
    let p = this.place;
    while (p < bytes.length && this.rows < wanted) {
      const start = p;
      const row = this.rows;
      let cells = 0;
      for (; ; p++) {
        p = cells < columns ? readers[cells].read(p, row) : this.#readBeyond(p, row);
        cells++;
        if (bytes[p] !== delimiter) break;
      }
      p += bytes[p] === CR && bytes[p + 1] === LF ? 2 : 1;
      this.#endRow(start, cells);
    }
    this.place = p;
  }

  #readBeyond(p: number, row: number): number {
    const cell = this.#source.scanner;
    const end = cell.scan(p);
    if (cell.end > cell.start) this.beyond.push({ row, text: cell.text() });
    return end;
  }

  #endRow(start: number, cells: number): void {
    const { keepEmptyRows, named } = this.#layout;
    const readers = this.#readers;
    if (!(keepEmptyRows && cells > 1) && this.#isEmpty(start)) {
      this.emptyLines.push(this.rows);
      return;
    }
    for (let column = cells; column < readers.length; column++) readers[column].lack(this.rows);
    if (cells < named && this.short.count++ === 0) this.short.first = this.rows;
    this.rows++;
  }

  /** Whether all cells of a row are empty; a quoted nothing counts where it stands alone in a table of one column. */
  #isEmpty(start: number): boolean {
    const { bytes, scanner } = this.#source;
    const { delimiter } = this.#layout;
    const first = bytes[start];
    if (first >= ZERO && first <= TILDE && first !== delimiter) return false;
    for (let from = start; ; from++) {
      const end = scanner.scan(from);
      if (scanner.end > scanner.start || (scanner.quoted && from === start && this.#readers.length === 1)) return false;
      if (bytes[end] !== delimiter) return true;
      from = end;
    }
  }
}

function readerFor(source: CellSource, store: CellStore, column: number) {
  switch (store.as) {
    case 'number':
      return new NumberReader(source, store, column);
    case 'text':
      return new TextReader(source, store, column);
    case 'nothing':
      return new PassingReader(source);
  }
}

/** Passes over the cells of a column that nobody reads. */
class PassingReader {
  readonly #source: CellSource;

  constructor(source: CellSource) {
    this.#source = source;
  }

  resize(_rows: number): void {}

  lack(_row: number): void {}

  read(p: number, _row: number): number {
    return this.#source.scanner.scan(p);
  }
}

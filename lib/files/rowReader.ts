import { CellSource } from './cellSource.ts';
import { CellStore, type PartStored } from './cellStore.ts';
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

/** Rows that another reader has read. */
export interface PartRead extends RowsRead {
  readonly stores: readonly PartStored[];
}

/**
 * Reads rows of cells from bytes into one store a column: a state machine over bytes, which makes no string for a number
 * or for a text seen before. `CR`, `LF` and `CRLF` all end a row, mixed as they may be.
 */
export class RowReader {
  /** The engine drops what it compiled for a class that has no instance left; with one that stays, only the first file is slow. */
  static readonly kept = new RowReader(
    new Uint8Array(0),
    0,
    { delimiter: 0, decimal: 0, keepEmptyRows: false, named: 0 },
    [new CellStore('number'), new CellStore('text')],
  );

  rows = 0;
  /** Where the next row begins. */
  place: number;
  /** For how many rows the stores have room. */
  capacity = 0;
  readonly emptyLines: number[] = [];
  readonly short = { count: 0, first: -1 };
  readonly beyond: { row: number; text: string }[] = [];
  readonly broken: { row: number; column: number; text: string }[];
  readonly #start: number;
  readonly #layout: Layout;
  readonly #source: CellSource;
  readonly #readers: readonly (NumberReader | TextReader | PassingReader)[];

  /**
   * @param bytes  UTF-8 that ends with a line end, as `decode` gives it
   * @param start  where the first row begins
   * @param stores  one a column, filled here
   */
  constructor(
    readonly bytes: Uint8Array,
    start: number,
    layout: Layout,
    readonly stores: readonly CellStore[],
  ) {
    const source = new CellSource(bytes, layout.delimiter, layout.decimal);
    this.place = start;
    this.broken = source.broken;
    this.#start = start;
    this.#layout = layout;
    this.#source = source;
    this.#readers = stores.map((store, column) => readerFor(source, store, column));
  }

  /** Begins anew at the first byte, as `bytes` hold other text now. */
  rewind(): void {
    this.place = 0;
    for (const reader of this.#readers) reader.forget();
  }

  /** Makes room for that many rows, or cuts down to them. */
  resize(rows: number): void {
    for (const reader of this.#readers) reader.resize(rows);
    this.capacity = rows;
  }

  /** Reads the rows that begin before `end`, until there are `limit` of them in all. */
  readTo(end: number, limit = Number.POSITIVE_INFINITY): void {
    const start = this.#start;
    while (this.place < end && this.rows < limit) {
      const wanted = Math.min(this.rows + blockRows, limit);
      if (wanted > this.capacity) {
        const share = this.rows === 0 ? 0 : (this.bytes.length - start) / (this.place - start);
        this.resize(Math.max(wanted, Math.ceil(this.rows * share * 1.02)));
      }
      this.#readBlock(end, wanted);
    }
  }

  /** Takes up the next rows, which another reader has read; their cells lie in the stores from `from` on. */
  append(part: PartRead, from: number): void {
    const { rows } = this;
    const below = <Cell extends { readonly row: number }>(cell: Cell) => ({ ...cell, row: rows + cell.row });
    this.stores.forEach((store, column) => {
      store.append(part.stores[column], from, part.rows, rows);
    });
    for (const row of part.emptyLines) this.emptyLines.push(rows + row);
    for (const cell of part.beyond) this.beyond.push(below(cell));
    for (const cell of part.broken) this.broken.push(below(cell));
    if (this.short.count === 0 && part.short.count > 0) this.short.first = rows + part.short.first;
    this.short.count += part.short.count;
    this.rows += part.rows;
  }

  /** What has been read; the stores are cut down to it. */
  finish(): RowsRead {
    this.resize(this.rows);
    const { rows, emptyLines, short, beyond, broken } = this;
    return { rows, emptyLines, short, beyond, broken };
  }

  #readBlock(end: number, wanted: number): void {
    const { bytes } = this;
    const { delimiter } = this.#layout;
    const readers = this.#readers;
    const columns = readers.length;
    let p = this.place;
    while (p < end && this.rows < wanted) {
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
    const { bytes } = this;
    const { scanner } = this.#source;
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

  forget(): void {}

  lack(_row: number): void {}

  read(p: number, _row: number): number {
    return this.#source.scanner.scan(p);
  }
}

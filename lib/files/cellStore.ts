import { Dictionary, type PackedTexts } from './dictionary.ts';

export interface CellStoreOptions {
  /** Numbers outside these are not taken as they stand. */
  readonly least?: number;
  readonly most?: number;
  /** `007` is no number here. */
  readonly strict?: boolean;
  /** A quoted number is a text. */
  readonly quotesMeanText?: boolean;
}

/** What a store knows beside its values and codes. */
export interface PartStored {
  readonly texts: PackedTexts;
  readonly oddRows: readonly number[];
  readonly oddCodes: readonly number[];
  readonly quoted: boolean;
}

/** Where one column's cells go while the bytes are read. */
export class CellStore {
  readonly least: number;
  readonly most: number;
  readonly strict: boolean;
  readonly quotesMeanText: boolean;
  values: Float64Array = new Float64Array(0);
  codes: Int32Array = new Int32Array(0);
  readonly texts = new Dictionary();
  /** Of a number column: rows whose cell is not plainly a number within the limits, and the code of its text. */
  readonly oddRows: number[] = [];
  readonly oddCodes: number[] = [];
  /** Whether a cell with text in it was quoted. */
  quoted = false;

  /**
   * @param as  `number`: cells are plain numbers, save a few. `text`: every cell by its code. `nothing`: passed over
   */
  constructor(
    readonly as: 'number' | 'text' | 'nothing',
    options: CellStoreOptions = {},
  ) {
    this.least = options.least ?? Number.NEGATIVE_INFINITY;
    this.most = options.most ?? Number.POSITIVE_INFINITY;
    this.strict = options.strict ?? false;
    this.quotesMeanText = options.quotesMeanText ?? false;
  }

  /** Makes room for that many rows, or cuts down to them. */
  resize(rows: number): void {
    if (this.as === 'number') this.values = resized(this.values, rows, (length) => new Float64Array(length));
    if (this.as === 'text') this.codes = resized(this.codes, rows, (length) => new Int32Array(length));
  }

  /** Makes room for that many rows in memory that another thread sees too, and keeps the first. */
  share(kept: number, rows: number): void {
    const shared = (bytes: number) => new SharedArrayBuffer(rows * bytes);
    if (this.as === 'number') this.values = withCells(new Float64Array(shared(8)), this.values.subarray(0, kept));
    if (this.as === 'text') this.codes = withCells(new Int32Array(shared(4)), this.codes.subarray(0, kept));
  }

  /** Takes up the cells of another store, which lie in this one's `rows` rows from `from` on, as those from `to` on. */
  append({ texts, oddRows, oddCodes, quoted }: PartStored, from: number, rows: number, to: number): void {
    const codes = this.texts.codesOf(texts);
    if (this.as === 'number') this.values.copyWithin(to, from, from + rows);
    if (this.as === 'text') recode(this.codes, codes, from, rows, to);
    for (const row of oddRows) this.oddRows.push(to + row);
    for (const code of oddCodes) this.oddCodes.push(codes[code]);
    this.quoted ||= quoted;
  }
}

function recode(cells: Int32Array, codes: Int32Array, from: number, rows: number, to: number): void {
  for (let row = 0; row < rows; row++) {
    const code = cells[from + row];
    cells[to + row] = code < 0 ? code : codes[code];
  }
}

type Cells = Float64Array | Int32Array;

function resized<T extends Cells>(cells: T, rows: number, make: (length: number) => T): T {
  // A sixteenth too long costs less than a second copy of everything.
  if (cells.length >= rows && cells.length <= rows + rows / 16) return cells.subarray(0, rows) as T;
  return withCells(make(rows), cells);
}

/** The first of the cells, as many as there is room for. */
function withCells<T extends Cells>(room: T, cells: T): T {
  room.set(cells.length > room.length ? cells.subarray(0, room.length) : cells);
  return room;
}

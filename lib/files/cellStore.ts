import { Dictionary } from './dictionary.ts';

export interface CellStoreOptions {
  /** Numbers outside these are not taken as they stand. */
  readonly least?: number;
  readonly most?: number;
  /** `007` is no number here. */
  readonly strict?: boolean;
  /** A quoted number is a text. */
  readonly quotesMeanText?: boolean;
}

/** Where one column's cells go while the bytes are read. */
export class CellStore {
  readonly least: number;
  readonly most: number;
  readonly strict: boolean;
  readonly quotesMeanText: boolean;
  values = new Float64Array(0);
  codes = new Int32Array(0);
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
}

type Cells = Float64Array<ArrayBuffer> | Int32Array<ArrayBuffer>;

function resized<T extends Cells>(cells: T, rows: number, make: (length: number) => T): T {
  // A sixteenth too long costs less than a second copy of everything.
  if (cells.length >= rows && cells.length <= rows + rows / 16) return cells.subarray(0, rows) as T;
  const next = make(rows);
  next.set(cells.length > rows ? cells.subarray(0, rows) : cells);
  return next;
}

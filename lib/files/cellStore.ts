import { Dictionary } from './dictionary.ts';

/** Where one column's cells go while the bytes are read. */
export class CellStore {
  /** `number`: cells are plain numbers, save a few. `text`: every cell by its code. `nothing`: passed over. */
  readonly as: 'number' | 'text' | 'nothing';
  /** Numbers outside these are not taken as they stand. */
  readonly least: number;
  readonly most: number;
  /** `007` is no number here. */
  readonly strict: boolean;
  /** A quoted number is a text. */
  readonly quotesMeanText: boolean;
  values = new Float64Array(0);
  codes = new Int32Array(0);
  readonly texts = new Dictionary();
  /** Of a number column: rows whose cell is not plainly a number within the limits, and the code of its text. */
  readonly oddRows: number[] = [];
  readonly oddCodes: number[] = [];
  /** Whether a cell with text in it was quoted. */
  quoted = false;

  constructor(
    as: 'number' | 'text' | 'nothing',
    options: { least?: number; most?: number; strict?: boolean; quotesMeanText?: boolean } = {},
  ) {
    this.as = as;
    this.least = options.least ?? Number.NEGATIVE_INFINITY;
    this.most = options.most ?? Number.POSITIVE_INFINITY;
    this.strict = options.strict ?? false;
    this.quotesMeanText = options.quotesMeanText ?? false;
  }

  /** Makes room for that many rows, or cuts down to them. */
  resize(rows: number): void {
    if (this.as === 'number' && this.values.length !== rows) {
      const values = new Float64Array(rows);
      values.set(this.values.length > rows ? this.values.subarray(0, rows) : this.values);
      this.values = values;
    }
    if (this.as === 'text' && this.codes.length !== rows) {
      const codes = new Int32Array(rows);
      codes.set(this.codes.length > rows ? this.codes.subarray(0, rows) : this.codes);
      this.codes = codes;
    }
  }
}

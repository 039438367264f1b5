import { CellScanner } from './cellScanner.ts';
import type { CellStore } from './cellStore.ts';

const LF = 10;
const CR = 13;

/** The bytes that cells are read from, and what is the same for all columns. */
export class CellSource {
  /** For looking at four bytes at once. */
  readonly view: DataView;
  /** Before this there are eight bytes to look at. */
  readonly safe: number;
  /** 1 for a byte that ends a cell. */
  readonly terminates = new Uint8Array(256);
  readonly scanner: CellScanner;
  /** Cells whose quotes don't add up. */
  readonly broken: { row: number; column: number; text: string }[] = [];

  /**
   * @param bytes  UTF-8 that ends with a line end
   * @param decimal  the byte of the decimal mark
   */
  constructor(
    readonly bytes: Uint8Array,
    delimiter: number,
    readonly decimal: number,
  ) {
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
    this.safe = bytes.length - 8;
    this.scanner = new CellScanner(bytes, delimiter);
    for (const byte of [delimiter, LF, CR]) this.terminates[byte] = 1;
  }

  /** Scans a cell that may be quoted or have blanks around it; returns where it ends. */
  scan(p: number, row: number, column: number, store: CellStore): number {
    const cell = this.scanner;
    const end = cell.scan(p);
    if (cell.quoted && cell.end > cell.start) store.quoted = true;
    if (cell.broken) this.broken.push({ row, column, text: cell.text() });
    return end;
  }
}

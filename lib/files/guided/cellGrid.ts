import { CellScanner } from '../cellScanner.ts';
import { decode } from '../decode.ts';
import { findLayout, readRecord } from '../layout.ts';

/** The cells of a file or of one sheet of it as texts, row by row as a spreadsheet numbers them, from 0. */
export interface CellGrid {
  readonly file: string;
  /** The sheet's name, where the file has several; `''` for a text file. */
  readonly sheet: string;
  readonly rows: readonly (readonly string[])[];
  /** From where a day number counts its days: of the file, where it says so. */
  readonly serial: SerialDays;
}

/** More columns than anyone matches by hand: such a file is no table of measurements. */
export const mostColumns = 1000;

/** Spreadsheets count days from the end of 1899, old ones on some computers from 1904. */
export type SerialDays = 1900 | 1904;

/**
 * The cells of a text file, parted as `readTable` parts them.
 * @example gridOfText('horse;date\nBella;2026-03-09', 'feet.csv').rows[1] // ['Bella', '2026-03-09']
 */
export function gridOfText(source: string | Uint8Array, file: string): CellGrid {
  const { bytes, start } = decode(source);
  const layout = findLayout(bytes, start);
  const scanner = new CellScanner(bytes, layout.delimiter.charCodeAt(0));
  const rows: string[][] = Array.from({ length: layout.skipped }, () => []);
  for (let next = layout.start; next < bytes.length; ) {
    const record = readRecord(scanner, next);
    next = record.next;
    rows.push(record.cells.map(({ text }) => text));
  }
  return { file, sheet: '', rows, serial: 1900 };
}

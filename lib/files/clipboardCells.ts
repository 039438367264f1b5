import { CellScanner } from './cellScanner.ts';
import { markOf, readRecord } from './layout.ts';
import type { DecimalMark } from './parseQuantity.ts';

/**
 * The cells of a block as programs with tables put it on the clipboard: lines of cells parted by tabs, quoted where a cell
 * holds a tab or a line break.
 * @returns the cells as text, lines of one length, and the decimal mark that they were written with
 * @example clipboardCells('52,5\t8,5 cm\n51\t8,4 cm\n') // { cells: [['52,5', '8,5 cm'], ['51', '8,4 cm']], mark: ',' }
 */
export function clipboardCells(text: string): { cells: string[][]; mark: DecimalMark } {
  if (text === '') return { cells: [], mark: '.' };
  const bytes = new TextEncoder().encode(/[\r\n]$/.test(text) ? text : `${text}\n`);
  const scanner = new CellScanner(bytes, '\t'.charCodeAt(0));
  const cells: string[][] = [];
  for (let place = 0; place < bytes.length; ) {
    const record = readRecord(scanner, place);
    place = record.next;
    cells.push(record.cells.map((cell) => cell.text));
  }
  const width = Math.max(0, ...cells.map((line) => line.length));
  for (const line of cells) while (line.length < width) line.push('');
  return { cells, mark: markOf(cells) };
}

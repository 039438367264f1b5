import { CellScanner } from './cellScanner.ts';
import type { DecimalMark } from './parseQuantity.ts';

export interface FileLayout {
  readonly delimiter: ',' | ';' | '\t';
  readonly mark: DecimalMark;
  /** Where the first line begins that is not a hint for spreadsheets. */
  readonly start: number;
  /** How many lines come before it. */
  readonly skipped: number;
}

const LF = 10;
const CR = 13;
const sampleRows = 40;
const sampleBytes = 1 << 16;

/**
 * How a file is laid out, decided from its first rows: what parts its cells, and its decimal mark.
 * @param bytes  UTF-8 that ends with a line end
 * @param start  after a byte order mark
 */
export function findLayout(bytes: Uint8Array, start: number): FileLayout {
  const hint = /^sep=([,;\t])\r?\n?$/i.exec(ascii(bytes, start, lineEnd(bytes, start)));
  if (hint) {
    const delimiter = hint[1] as FileLayout['delimiter'];
    const after = lineEnd(bytes, start);
    return { delimiter, start: after, skipped: 1, mark: decimalMark(sample(bytes, after, delimiter).rows, delimiter) };
  }
  const trials = (['\t', ';', ','] as const)
    .map((delimiter) => ({ delimiter, ...sample(bytes, start, delimiter) }))
    .filter(({ title }) => title >= 0);
  if (trials.length === 0) return { delimiter: ',', mark: '.', start, skipped: 0 };
  const shortest = Math.min(...trials.map(({ title }) => title));
  const first = trials.filter(({ title }) => title === shortest);
  const most = Math.max(...first.map(({ fit }) => fit));
  const good = first.filter(({ fit }) => fit * 1.1 >= most);
  const least = Math.min(...good.map(({ stray }) => stray));
  // Where two do equally well, the rarer sign is meant: commas also stand in numbers and in sentences.
  const { delimiter, rows } = good.find(({ stray }) => stray === least)!;
  return { delimiter, mark: decimalMark(rows, delimiter), start, skipped: 0 };
}

interface Sample {
  readonly rows: string[][];
  /** How many cells hold quotes that open or close none: a sign of the wrong delimiter. */
  readonly stray: number;
  /** How many rows of one cell stand before the first of several; -1 where all have one. */
  readonly title: number;
  /** The share of the rows from there that have as many cells as the first of them. */
  readonly fit: number;
}

/** A comma is the decimal mark where more cells have it as one than have a point. Cells parted by commas have points. */
function decimalMark(rows: readonly string[][], delimiter: string): DecimalMark {
  if (delimiter === ',') return '.';
  return markOf(rows.slice(1));
}

/** The decimal mark of rows of cells: a comma where more have it as one than have a point. */
export function markOf(rows: readonly (readonly string[])[]): DecimalMark {
  let commas = 0;
  let points = 0;
  for (const row of rows)
    for (const cell of row) {
      if (/^\s*[+-]?\d+,\d+(?!\d*[.,])/.test(cell)) commas++;
      else if (/^\s*[+-]?\d+\.\d+(?!\d*[.,/-])/.test(cell)) points++;
    }
  return commas > points ? ',' : '.';
}

/** The first rows, as they are under that delimiter. */
function sample(bytes: Uint8Array, start: number, delimiter: string): Sample {
  const scanner = new CellScanner(bytes, delimiter.charCodeAt(0));
  const rows: string[][] = [];
  let stray = 0;
  const end = Math.min(bytes.length, start + sampleBytes);
  let place = start;
  while (place < end && rows.length < sampleRows) {
    const record = readRecord(scanner, place);
    place = record.next;
    stray += record.cells.filter(({ text, quoted, broken }) => broken || (!quoted && text.includes('"'))).length;
    if (record.cells.length > 1 || record.cells[0].text !== '') rows.push(record.cells.map(({ text }) => text));
  }
  const title = rows.findIndex(({ length }) => length > 1);
  const even = rows.slice(title).filter(({ length }) => length === rows[title]?.length).length;
  return { rows, stray, title, fit: even / (rows.length - title) };
}

export interface RecordCell {
  readonly text: string;
  readonly quoted: boolean;
  /** Whether its quotes don't add up. */
  readonly broken: boolean;
}

/** One row of cells as text, and where the next begins. */
export function readRecord(scanner: CellScanner, start: number): { cells: RecordCell[]; next: number } {
  const { bytes, delimiter } = scanner;
  const cells: RecordCell[] = [];
  let place = start;
  for (;;) {
    place = scanner.scan(place);
    cells.push({ text: scanner.text(), quoted: scanner.quoted, broken: scanner.broken });
    if (bytes[place] !== delimiter) return { cells, next: lineEnd(bytes, place) };
    place++;
  }
}

/** Just after the next line end. */
function lineEnd(bytes: Uint8Array, from: number): number {
  let place = from;
  while (place < bytes.length && bytes[place] !== LF && bytes[place] !== CR) place++;
  if (bytes[place] === CR && bytes[place + 1] === LF) place++;
  return Math.min(place + 1, bytes.length);
}

function ascii(bytes: Uint8Array, start: number, end: number): string {
  return String.fromCharCode(...bytes.subarray(start, Math.min(end, start + 12)));
}

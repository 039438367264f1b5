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
  const trials = (['\t', ';', ','] as const).map((delimiter) => {
    const { rows, stray } = sample(bytes, start, delimiter);
    return { delimiter, rows, stray, fit: evenness(rows) };
  });
  const best = Math.max(...trials.map(({ fit }) => fit));
  if (best === 0) return { delimiter: ',', mark: '.', start, skipped: 0 };
  const good = trials.filter(({ fit }) => fit * 1.1 >= best);
  const least = Math.min(...good.map(({ stray }) => stray));
  // Where two do equally well, the rarer sign is meant: commas also stand in numbers and in sentences.
  const { delimiter, rows } = good.find(({ stray }) => stray === least)!;
  return { delimiter, mark: decimalMark(rows, delimiter), start, skipped: 0 };
}

/** The share of rows that have as many cells as the headings; 0 where there is one heading. */
function evenness(rows: readonly string[][]): number {
  const [headings, ...rest] = rows;
  if (headings === undefined || headings.length === 1) return 0;
  const even = rest.filter(({ length }) => length === headings.length).length;
  return (1 + even) / (1 + rest.length);
}

/** A comma is the decimal mark where more cells have it as one than have a point. Cells parted by commas have points. */
function decimalMark(rows: readonly string[][], delimiter: string): DecimalMark {
  if (delimiter === ',') return '.';
  let commas = 0;
  let points = 0;
  for (const row of rows.slice(1))
    for (const cell of row) {
      if (/^\s*[+-]?\d+,\d+(?!\d*[.,])/.test(cell)) commas++;
      else if (/^\s*[+-]?\d+\.\d+(?!\d*[.,/-])/.test(cell)) points++;
    }
  return commas > points ? ',' : '.';
}

/** The first rows under that delimiter, and how many cells hold quotes that open or close none: a sign of the wrong one. */
function sample(bytes: Uint8Array, start: number, delimiter: string): { rows: string[][]; stray: number } {
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
  return { rows, stray };
}

/** One row of cells as text, and where the next begins. */
export function readRecord(
  scanner: CellScanner,
  start: number,
): { cells: { text: string; quoted: boolean; broken: boolean }[]; next: number } {
  const { bytes, delimiter } = scanner;
  const cells: { text: string; quoted: boolean; broken: boolean }[] = [];
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

import { codedCells, headingCell, textCell } from './codedCells.ts';
import { longestNumber, putNumber } from './putNumber.ts';
import { namedColumns, type Writable } from './writable.ts';

export interface WriteOptions {
  /** Which columns, in order; all where left out. */
  readonly columns?: readonly string[];
  /** Which rows, in order; all where left out. */
  readonly rows?: ArrayLike<number>;
  /** What to write where a cell has no value, by column and row: the texts that could not be used when it was read. */
  readonly entered?: ReadonlyMap<string, ReadonlyMap<number, string>>;
}

const LF = 10;
const COMMA = 44;
const chunkLength = 1 << 16;

/**
 * A table as tidy CSV: UTF-8, LF, commas, quotes by RFC 4180, one heading row with the columns' names. Numbers with all
 * their digits, dates as ISO dates, yes and no as `TRUE` and `FALSE`, nothing for missing; never an infinity.
 * A text that a spreadsheet would run gets an apostrophe, which `readTable` takes off again.
 * @throws TypeError for a column without a name, and for a date that has no ISO form of four-digit years
 * @source RFC 4180
 * @example writeTable({ limb: { values: ['LF', 'RF'] }, toe_angle_deg: { values: Float64Array.of(52, NaN) } })
 *   // 'limb,toe_angle_deg\nLF,52\nRF,\n'
 */
export function writeTable(table: Writable, options: WriteOptions = {}): string {
  const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
  let text = '';
  for (const chunk of tableChunks(table, options)) text += decoder.decode(chunk);
  return text;
}

/** What `writeTable` writes, as bytes in pieces of whole rows: for a table that no one string has to hold. */
export function* tableChunks(table: Writable, options: WriteOptions = {}): Generator<Uint8Array<ArrayBuffer>> {
  const source = namedColumns(table);
  const names = options.columns ?? source.names;
  if (names.length === 0) return;
  const unnamed = names.indexOf('');
  if (unnamed >= 0) throw new TypeError(`Column ${unnamed + 1} has no name; give it one to write the table`);

  const columns = names.map((name) => source.column(name));
  const numbers = columns.map((column) => (column.kind === 'number' ? column.values : undefined));
  const coded = columns.map((column) => (column.kind === 'number' ? undefined : codedCells(column)));
  const encoder = new TextEncoder();
  // Alone in its row, a missing cell would leave an empty line, which is no row.
  const missing = encoder.encode(names.length === 1 ? '""' : '');
  const entered = names.map(
    (name) =>
      new Map(Array.from(options.entered?.get(name) ?? [], ([row, text]) => [row, encoder.encode(textCell(text))])),
  );
  const longestRow = columns.reduce((sum, _, c) => sum + 1 + longestCell(coded[c]?.ends, entered[c]), 2);

  const headings = encoder.encode(`${names.map(headingCell).join(',')}\n`);
  yield headings;
  const length = Math.max(chunkLength, longestRow);
  let chunk = new Uint8Array(length);
  let at = 0;
  const rows = options.rows?.length ?? columns[0].values.length;
  for (let i = 0; i < rows; i++) {
    if (at + longestRow > length) {
      yield chunk.subarray(0, at);
      chunk = new Uint8Array(length);
      at = 0;
    }
    const row = options.rows ? options.rows[i] : i;
    for (let c = 0; c < columns.length; c++) {
      const values = numbers[c];
      if (values !== undefined) {
        const value = values[row];
        if (Number.isFinite(value)) at = putNumber(value, chunk, at);
        else at = put(entered[c].get(row) ?? missing, chunk, at);
      } else {
        const { codes, pool, ends } = coded[c]!;
        const code = codes[row];
        if (code < 0) at = put(entered[c].get(row) ?? missing, chunk, at);
        else for (let from = ends[code]; from < ends[code + 1]; from++) chunk[at++] = pool[from];
      }
      chunk[at++] = COMMA;
    }
    chunk[at - 1] = LF;
  }
  if (at > 0) yield chunk.subarray(0, at);
}

function put(cell: Uint8Array, bytes: Uint8Array, at: number): number {
  bytes.set(cell, at);
  return at + cell.length;
}

function longestCell(ends: Int32Array | undefined, entered: ReadonlyMap<number, Uint8Array>): number {
  let longest = longestNumber;
  if (ends) for (let code = 1; code < ends.length; code++) longest = Math.max(longest, ends[code] - ends[code - 1]);
  for (const { length } of entered.values()) longest = Math.max(longest, length);
  return longest;
}

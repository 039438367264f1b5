import { headingCell } from './codedCells.ts';
import { RowWriter } from './rowWriter.ts';
import { namedColumns, type Writable } from './writable.ts';

export interface WriteOptions {
  /** Which columns, in order; all where left out. */
  readonly columns?: readonly string[];
  /** Which rows, in order; all where left out. */
  readonly rows?: ArrayLike<number>;
  /** What to write where a cell has no value, by column and row: the texts that could not be used when it was read. */
  readonly entered?: ReadonlyMap<string, ReadonlyMap<number, string>>;
}

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
  const entered = names.map((name) => options.entered?.get(name));
  const rows = options.rows?.length ?? columns[0].values.length;
  const writer = new RowWriter(columns, entered, rows, options.rows);
  yield new TextEncoder().encode(`${names.map(headingCell).join(',')}\n`);
  while (writer.next < rows) {
    const chunk = new Uint8Array(Math.max(chunkLength, writer.longestRow));
    yield chunk.subarray(0, writer.fill(chunk));
  }
}

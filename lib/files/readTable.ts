import type { TableName } from '../hoof/context.ts';
import type { Column, Columns } from '../sheet/column.ts';
import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import { CellScanner } from './cellScanner.ts';
import { CellStore } from './cellStore.ts';
import type { ColumnPlan } from './columnPlan.ts';
import type { DateOrder } from './dateOrder.ts';
import { decode, type Encoding } from './decode.ts';
import { schemaOfHeadings } from './headings.ts';
import { inferKind } from './inferKind.ts';
import { isText } from './isText.ts';
import { findLayout, type RecordCell, readRecord } from './layout.ts';
import { logKeys } from './logKeys.ts';
import { isMissing } from './missingWords.ts';
import { planColumns } from './planColumns.ts';
import type { Problem } from './problem.ts';
import { ProblemLog } from './problemLog.ts';
import { needsQuotes } from './quoting.ts';
import { headingFactor, readColumn } from './readColumn.ts';
import { readRows } from './readRows.ts';
import type { RowsRead } from './rowReader.ts';
import { schemas, type TableSchema } from './schemas.ts';

export interface ReadOptions {
  /** The file's name, for its problems. */
  readonly file?: string;
  /** The order of day and month, where the user states it. */
  readonly dates?: 'dmy' | 'mdy';
  /** Which table it is; left out, the headings tell, and where they don't, cells are read as they look. */
  readonly schema?: TableName | TableSchema;
}

export interface TableRead {
  readonly columns: Columns;
  readonly problems: Problem[];
  /** The order of day and month; `undecided` where the file leaves it open, and those dates are missing. */
  readonly dates: DateOrder;
  /** Which table it is, `undefined` where the headings don't tell. */
  readonly schema: string | undefined;
  /** For each column the heading it had, and the UCUM code of a unit written there that is not the column's own. */
  readonly headings: readonly { readonly column: string; readonly heading: string; readonly unit?: string }[];
  readonly delimiter: ',' | ';' | '\t';
  readonly encoding: Encoding;
  /** The text of every cell that could not be used, by column and row (from 0). */
  readonly entered: ReadonlyMap<string, ReadonlyMap<number, string>>;
}

type Read = (stores: readonly CellStore[], limit?: number) => RowsRead;

const sampleRows = 100;
/** A table's headings stand in one of its first rows, below its title. */
const titleRows = 8;

/**
 * Reads a table of feet, horses or visits, or any other, from CSV as people and programs write it: UTF-8, UTF-16 or
 * windows-1252; parted by commas, semicolons or tabs; headings, units, limbs and dates in common words.
 * Inside are mm, deg, kg, days and limb codes. A cell that can't be used is missing, and a row in `problems` says why.
 * @param source  the file's bytes (which are not changed) or its text
 * @returns numbers as `Float64Array` with `NaN` for missing, text as `TextColumn`, in the file's order; a heading that
 *   means none of the table's columns keeps its own name
 * @example readTable('horse,date,limb,toe angle\nBella,2026-03-09,near fore,52°').columns.toe_angle_deg.values[0] // 52
 */
export function readTable(source: string | Uint8Array, options: ReadOptions = {}): TableRead {
  return readTableBy(readRows, source, options);
}

/** As `readTable`, the rows by whoever is given. */
export function readTableBy(by: typeof readRows, source: string | Uint8Array, options: ReadOptions): TableRead {
  const found = decode(source);
  const packed = found.encoding === 'windows-1252' && !isText(found.bytes);
  const { bytes, start, encoding } = packed ? decode('') : found;
  const { delimiter, mark, ...layout } = findLayout(bytes, start);
  const told = typeof options.schema === 'string' ? schemas[options.schema] : options.schema;
  const scanner = new CellScanner(bytes, delimiter.charCodeAt(0));
  const heading = readHeadings(scanner, layout.start, layout.skipped, told);
  const texts = heading.cells.map(({ text }) => text);
  const schema = told ?? schemaOfHeadings(texts);
  const rowLayout = {
    delimiter: delimiter.charCodeAt(0),
    decimal: mark.charCodeAt(0),
    keepEmptyRows: schema === undefined || schema.keys.length === 0,
    named: namedColumns(texts),
  };
  const read: Read = (stores, limit) => by(bytes, heading.next, rowLayout, stores, limit);

  let rows: RowsRead | undefined;
  const log = new ProblemLog(
    options.file ?? '',
    (row) => heading.row + 1 + row + (rows === undefined ? 0 : countUpTo(rows.emptyLines, row)),
  );
  if (encoding === 'windows-1252') log.about('encoding', 0);
  if (texts.length === 0) log.about(packed ? 'not-text' : 'empty-file', 0);
  for (const { row, cells } of heading.titles)
    log.about(
      'title-row',
      row,
      '',
      cells
        .flatMap(({ text }) => (text === '' ? [] : text))
        .join(' ')
        .trim(),
    );
  for (const { text } of heading.cells.filter(({ broken }) => broken))
    log.about('broken-quotes', heading.row, '', text);

  const planned = planColumns(texts, heading.row, schema, log);
  const quotesMeanText = !heading.cells.some(({ text, quoted }) => quoted && text !== '' && !needsQuotes(text));
  const { plans, stores, rows: rowsRead } = readCells(planned, read, mark, quotesMeanText);
  rows = rowsRead;
  logRows(rows, plans, rowLayout.named, delimiter, log);

  const columns: Columns = Object.create(null);
  const finished = new Map<string, Column>();
  let dates: DateOrder = 'iso';
  plans.forEach((plan, c) => {
    if (plan.heading === '') {
      if (isEmpty(stores[c])) return;
      log.about('no-heading', heading.row, plan.name, '', plan.name);
    }
    const { column, order } = readColumn(plan, stores[c], mark, options.dates, log);
    if (order !== undefined && order !== 'iso') dates = order;
    columns[plan.name] = column;
    finished.set(plan.name, column);
  });
  if (schema) logKeys(schema, finished, rows.rows, log);
  log.problems.sort((a, b) => a.row - b.row);

  const headings = plans
    .filter(({ name }) => finished.has(name))
    .map(({ name, heading, headingUnit }) => ({ column: name, heading, unit: headingUnit }));
  const { problems, entered } = log;
  return { columns, problems, dates, schema: schema?.name, headings, delimiter, encoding, entered };
}

interface Headings {
  readonly cells: readonly RecordCell[];
  /** As a spreadsheet numbers it. */
  readonly row: number;
  /** Where the next row begins. */
  readonly next: number;
}

/** The row of headings: the first that is not empty, unless a row soon after it heads one of the three tables. */
function readHeadings(
  scanner: CellScanner,
  start: number,
  skipped: number,
  told: TableSchema | undefined,
): Headings & { titles: Headings[] } {
  const candidates: Headings[] = [];
  let row = skipped;
  let next = start;
  while (next < scanner.bytes.length && candidates.length < titleRows) {
    const record = readRecord(scanner, next);
    next = record.next;
    row++;
    if (record.cells.some(({ text }) => text !== '')) candidates.push({ cells: record.cells, row, next });
  }
  const heads = ({ cells }: Headings) => schemaOfHeadings(cells.map(({ text }) => text)) !== undefined;
  const known = told === undefined || Object.values(schemas).includes(told);
  const place = known ? Math.max(candidates.findIndex(heads), 0) : 0;
  const found = candidates[place] ?? { cells: [], row: 1, next };
  return { ...found, titles: candidates.slice(0, place) };
}

/** How many columns there are up to the last that has a heading. */
function namedColumns(headings: readonly string[]): number {
  return headings.findLastIndex((heading) => heading !== '') + 1;
}

/** Reads all cells. Columns that no schema knows are guessed from the first rows, and read again where that was wrong. */
function readCells(planned: readonly ColumnPlan[], read: Read, mark: '.' | ',', quotesMeanText: boolean) {
  const unknown = planned.some(({ schema }) => schema === undefined);
  const samples = planned.map(({ schema }) => new CellStore(schema ? 'nothing' : 'text'));
  if (unknown) read(samples, sampleRows);
  const kindOf = (store: CellStore) => (store.quoted && quotesMeanText ? 'text' : inferKind(store.texts.texts(), mark));
  const guessed = planned.map((plan, c) => (plan.schema ? plan : { ...plan, kind: kindOf(samples[c]) }));

  const stores = guessed.map((plan) => storeFor(plan, quotesMeanText));
  const rows = read(stores);
  const wrong = guessed.map(
    (plan, c) => plan.schema === undefined && plan.kind === 'number' && !holdsNumbers(stores[c]),
  );
  if (wrong.includes(true)) {
    const again = wrong.map((again) => new CellStore(again ? 'text' : 'nothing'));
    read(again);
    for (let c = 0; c < wrong.length; c++) if (wrong[c]) stores[c] = again[c];
  }
  const plans = guessed.map((plan, c) =>
    plan.schema || stores[c].as === 'number' ? plan : { ...plan, unit: '1', kind: kindOf(stores[c]) },
  );
  return { plans, stores, rows };
}

function storeFor(plan: ColumnPlan, quotesMeanText: boolean): CellStore {
  if (plan.kind !== 'number') return new CellStore('text');
  const factor = headingFactor(plan);
  const [least, most] = plan.schema?.within ?? [];
  return new CellStore('number', {
    least: least === undefined ? undefined : least / factor,
    most: most === undefined ? undefined : most / factor,
    strict: plan.schema === undefined,
    quotesMeanText: plan.schema === undefined && quotesMeanText,
  });
}

/** Whether a column read as numbers is one: what could not be read only says that there is no value. */
function holdsNumbers(store: CellStore): boolean {
  return !(store.quoted && store.quotesMeanText) && store.texts.texts().every(isMissing);
}

function isEmpty({ texts, values }: CellStore): boolean {
  return texts.size === 0 && values.every(Number.isNaN);
}

function logRows(
  rows: RowsRead,
  plans: readonly ColumnPlan[],
  named: number,
  delimiter: string,
  log: ProblemLog,
): void {
  const { short, beyond, broken } = rows;
  if (short.count > 0) {
    const detail = counted(short.count, {
      one: say`${named} cells in each row; 1 row has fewer`,
      other: say`${named} cells in each row; ${short.count} rows have fewer`,
    });
    log.inRow('short-rows', short.first, '', '', detail);
  }
  const sign = { ',': say`comma`, ';': say`semicolon`, '\t': say`tab` }[delimiter];
  for (const { row, text } of beyond) log.inRow('too-many-cells', row, '', text, sign);
  for (const { row, column, text } of broken) log.inRow('broken-quotes', row, plans[column].name, text);
}

/** How many of the numbers, which rise, are at most `limit`. */
function countUpTo(numbers: readonly number[], limit: number): number {
  let low = 0;
  let high = numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numbers[middle] <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

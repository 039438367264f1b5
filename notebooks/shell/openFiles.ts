import {
  type CellGrid,
  csvOf,
  gridOfText,
  isPacked,
  type KeptTable,
  type KeptTables,
  needsGuide,
  problemSentence,
  promising,
  readRecordZip,
  readSpreadsheet,
  readTable,
  say,
  type TableName,
  type TableRead,
  type WholeRecord,
} from '../../lib/index.ts';
import { tableNames } from './herdInUse.ts';

export type DateOrder = 'dmy' | 'mdy';

/** A table as someone has matched its columns. */
export interface GuidedTable {
  readonly name: TableName;
  readonly table: KeptTable;
}

/** What has to be asked while files are opened; `undefined` as an answer means: leave it. */
export interface Questions {
  /** For a file whose dates can be read both ways. */
  dates(file: string): Promise<DateOrder | undefined>;
  /** For a spreadsheet, or a file whose headings don't tell what it holds. */
  guided(sheets: readonly CellGrid[]): Promise<GuidedTable | undefined>;
}

/** What files hold: tables by what they are, or a whole record. */
export type OpenedFiles =
  | { readonly kind: 'tables'; readonly tables: KeptTables }
  | { readonly kind: 'record'; readonly record: WholeRecord; readonly file: string };

/**
 * Reads the files that someone chose or dropped, in any order.
 * @returns `undefined` where a question was left unanswered
 * @throws Error in words for the reader where a file can't be used, or two files hold the same table
 */
export async function openFiles(files: readonly File[], ask: Questions): Promise<OpenedFiles | undefined> {
  const tables: Partial<Record<TableName, KeptTable>> = {};
  for (const { name: file, bytes } of await Promise.all(files.map(bytesOf))) {
    const sheet = /\.(xls[xm]|ods)$/i.test(file);
    const record = isPacked(bytes) && !sheet ? await readRecordZip(bytes) : undefined;
    if (record && files.length > 1) throw new Error(say`${file} holds a whole record. Open it by itself`);
    if (record) return { kind: 'record', record, file };
    const read = isPacked(bytes)
      ? await ask.guided(await readSpreadsheet(bytes, file))
      : await textTable(await csvOf(bytes, file), file, ask);
    if (!read) return undefined;
    const { name, table } = read;
    const twin = tables[name];
    if (twin) throw new Error(say`${twin.file} and ${file} both hold the table of ${name}. Open one of them`);
    tables[name] = table;
  }
  return { kind: 'tables', tables };
}

async function textTable(bytes: Uint8Array, file: string, ask: Questions): Promise<GuidedTable | undefined> {
  let read = readTable(bytes, { file });
  if (Object.keys(read.columns).length === 0) throw new Error(problemSentence(read.problems[0]));
  const name = tableNames.find((one) => one === read.schema);
  if (!name || needsGuide(read)) {
    const grid = gridOfText(bytes, file);
    if (promising(grid)) return ask.guided([grid]);
  }
  if (!name)
    throw new Error(
      say`The headings of ${file} don’t say whether it holds feet, horses or visits. A table of feet has a horse, a date, a limb and at least one measurement`,
    );
  if (read.dates === 'undecided') {
    const dates = await ask.dates(file);
    if (!dates) return undefined;
    read = readTable(bytes, { file, dates });
  }
  return { name, table: keptTable(read, file) };
}

/** A table that was read, as it is kept. */
export function keptTable({ columns, problems, entered }: TableRead, file: string): KeptTable {
  return { columns, problems, entered, file };
}

const bytesOf = async (file: File) => ({ name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });

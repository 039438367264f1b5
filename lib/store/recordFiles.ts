import { dataPackage } from '../files/dataPackage.ts';
import type { Problem } from '../files/problem.ts';
import { readTable } from '../files/readTable.ts';
import type { TableSchema } from '../files/schemas.ts';
import { writeTable } from '../files/writeTable.ts';
import { type ColumnInput, type Columns, type Kind, rowCount, TextColumn } from '../sheet/column.ts';
import type { ComputedDefinition } from '../sheet/edits.ts';
import { say } from '../words/say.ts';
import { type JournalEntry, RECORD_VERSION } from './journal.ts';
import { isKeptPage, type KeptPage } from './keptPage.ts';
import type { KeptTable, KeptTables, TableName } from './tables.ts';

/** A whole record: its tables as they stand, every change that made them, and photographs where they are wished. */
export interface WholeRecord {
  /** What its owner calls it; `''` where it has no name. */
  readonly name: string;
  readonly tables: KeptTables;
  /** In order. */
  readonly journal: readonly JournalEntry[];
  /** Tables that were replaced by opening others, in order. */
  readonly earlier?: readonly EarlierTable[];
  /** Pages of its owner's own. */
  readonly pages?: readonly KeptPage[];
  /** By file name. */
  readonly photographs?: ReadonlyMap<string, Uint8Array>;
}

/** A table as it stood before another was opened in its place. */
export interface EarlierTable {
  /** The id of the entry that opened the other. */
  readonly opening: string;
  readonly table: TableName;
  readonly kept: KeptTable;
}

/** A record that can't be read back, in words for its owner. */
export class RecordError extends Error {
  override readonly name = 'RecordError';
}

const FORMAT = 'evenhoof record';
const tableNames: readonly TableName[] = ['feet', 'horses', 'visits'];
const photographs = 'photographs/';

/** What a table's CSV can't say, beside it. */
interface TableNote {
  readonly file: string;
  readonly rows: number;
  readonly problems: readonly Problem[];
  readonly own?: readonly ComputedDefinition[];
  readonly invented?: boolean;
  readonly opened?: string;
  readonly ids?: { readonly origins: readonly string[]; readonly codes: number[]; readonly numbers: number[] };
  readonly errors?: readonly (readonly [column: string, errors: (number | null)[]])[];
}

interface RecordNote {
  readonly format: typeof FORMAT;
  readonly version: number;
  readonly name: string;
  readonly tables: { readonly [name in TableName]?: TableNote };
  readonly earlier?: readonly (TableNote & Omit<EarlierTable, 'kept'>)[];
  readonly pages?: readonly KeptPage[];
}

/** One table among the files, by a name of its own. */
type Part = readonly [name: string, table: KeptTable];

/** The name of a table that was replaced: `earlier-1-feet`. */
const earlierName = (table: TableName, at: number) => `earlier-${at + 1}-${table}`;

/**
 * A record as files, the same bytes for the same record: `feet.csv`, `horses.csv` and `visits.csv`, tidy;
 * `datapackage.json`, which says what stands in them; `unread.csv`, the texts that could not be read; `journal.jsonl`,
 * one change a line; `earlier-1-feet.csv` and so on, tables that were replaced; `record.json`, what else it takes to read
 * the record back; and its photographs.
 */
export function recordFiles(record: WholeRecord): Map<string, Uint8Array> {
  const { name, tables, journal, earlier = [], pages = [], photographs: photos } = record;
  const kept: Part[] = [
    ...tableNames.flatMap((table): Part[] => (tables[table] ? [[table, tables[table]]] : [])),
    ...earlier.map(({ table, kept }, at): Part => [earlierName(table, at), kept]),
  ];
  const resources = kept.map(([table, { columns }]) => ({ name: table, path: `${table}.csv`, columns }));
  const unread = unreadTexts(kept);
  const note: RecordNote = {
    ...{ format: FORMAT, version: RECORD_VERSION, name },
    tables: Object.fromEntries(tableNames.flatMap((table) => (tables[table] ? [[table, noteOf(tables[table])]] : []))),
    ...(earlier.length > 0 && {
      earlier: earlier.map(({ opening, table, kept }) => ({ opening, table, ...noteOf(kept) })),
    }),
    ...(pages.length > 0 && { pages }),
  };
  const texts: [string, string][] = [
    ['record.json', json(note)],
    ['datapackage.json', json(dataPackage([...resources, { name: 'unread', path: 'unread.csv', columns: unread }]))],
    ...resources.map(({ path, columns }): [string, string] => [path, writeTable(columns)]),
    ['unread.csv', writeTable(unread)],
    ['journal.jsonl', journal.map((entry) => `${JSON.stringify(entry)}\n`).join('')],
  ];
  const encoder = new TextEncoder();
  const sorted = [...(photos ?? [])].sort(([a], [b]) => (a < b ? -1 : 1));
  return new Map<string, Uint8Array>([
    ...texts.map(([path, text]) => [path, encoder.encode(text)] as const),
    ...sorted.map(([path, bytes]) => [photographs + path, bytes] as const),
  ]);
}

const json = (value: unknown) => `${JSON.stringify(value, null, 1)}\n`;

function noteOf({ file, columns, problems, own, invented, opened, ids }: KeptTable): TableNote {
  const errors = Object.entries(columns).flatMap(([column, { error }]) =>
    error ? [[column, Array.from(error, (value) => (Number.isNaN(value) ? null : value))] as const] : [],
  );
  return {
    ...{ file, rows: rowCount(columns), problems, own, invented, opened },
    ...(ids && { ids: { origins: ids.origins, codes: [...ids.codes], numbers: [...ids.numbers] } }),
    ...(errors.length > 0 && { errors }),
  };
}

function unreadTexts(tables: readonly Part[]): Columns {
  const texts = tables.flatMap(([table, { entered }]) =>
    [...(entered ?? [])].flatMap(([column, cells]) => [...cells].map(([row, text]) => ({ table, column, row, text }))),
  );
  return {
    table: TextColumn.from(texts.map(({ table }) => table)),
    row: { values: Float64Array.from(texts, ({ row }) => row + 1) },
    column: TextColumn.from(texts.map(({ column }) => column)),
    text: TextColumn.from(texts.map(({ text }) => text)),
  };
}

/**
 * Reads a record back from its files: `recordFiles` of it gives the same bytes again.
 * @throws RecordError where a file is missing or broken, or a newer program wrote it
 */
export function recordOfFiles(files: ReadonlyMap<string, Uint8Array>): WholeRecord {
  const note = parsed<RecordNote>(textOf(files, 'record.json'), 'record.json');
  if (note?.format !== FORMAT) throw new RecordError(say`record.json is not that of a record of this notebook`);
  if (!(note.version <= RECORD_VERSION))
    throw new RecordError(
      say`This record was written by a newer version of the notebook. Open it there, or take the newer version first`,
    );
  const described = parsed<{ resources: Described[] }>(textOf(files, 'datapackage.json'), 'datapackage.json');
  const unread = readUnread(textOf(files, 'unread.csv'));
  const table = (name: string, about: TableNote): KeptTable => {
    const resource = described.resources.find((one) => one.name === name);
    if (!resource) throw new RecordError(say`datapackage.json does not say what stands in ${name}.csv`);
    return tableOf(name, about, resource, textOf(files, `${name}.csv`), unread.get(name));
  };
  const tables = tableNames.flatMap((name) => {
    const about = note.tables[name];
    return about ? [[name, table(name, about)] as const] : [];
  });
  const earlier = (note.earlier ?? []).map(({ opening, table: name, ...about }, at): EarlierTable => {
    return { opening, table: name, kept: table(earlierName(name, at), about) };
  });
  const pages = note.pages ?? [];
  if (!Array.isArray(pages) || !pages.every(isKeptPage))
    throw new RecordError(say`The pages kept in record.json are broken. Take an untouched copy of the record`);
  const lines = textOf(files, 'journal.jsonl').split('\n').slice(0, -1);
  const photos = [...files].filter(([path]) => path.startsWith(photographs) && path.length > photographs.length);
  return {
    name: note.name,
    tables: Object.fromEntries(tables),
    journal: lines.map((line, at) => parsed<JournalEntry>(line, say`line ${at + 1} of journal.jsonl`)),
    ...(earlier.length > 0 && { earlier }),
    ...(pages.length > 0 && { pages }),
    ...(photos.length > 0 && {
      photographs: new Map(photos.map(([path, bytes]) => [path.slice(photographs.length), bytes])),
    }),
  };
}

/** As much of a table's description as tells its columns apart. */
interface Described {
  readonly name: string;
  readonly schema: {
    readonly fields: readonly {
      readonly name: string;
      readonly type: 'number' | 'string' | 'date' | 'boolean';
      readonly unit?: string;
    }[];
  };
}

function tableOf(
  name: string,
  { file, rows, problems, own, invented, opened, ids, errors }: TableNote,
  { schema }: Described,
  csv: string,
  entered: ReadonlyMap<string, ReadonlyMap<number, string>> | undefined,
): KeptTable {
  const { columns, whole } = readPlain(csv, schema.fields);
  if (!whole) throw new RecordError(say`${name}.csv is broken. Take an untouched copy of the record`);
  if (rowCount(columns) !== rows)
    throw new RecordError(
      say`${name}.csv has ${rowCount(columns)} rows where record.json counts ${rows}. Take an untouched copy, or open ${name}.csv alone`,
    );
  for (const [column, values] of errors ?? [])
    columns[column] = { ...columns[column], error: Float64Array.from(values, (value) => value ?? Number.NaN) };
  return {
    ...{ columns, problems, file },
    ...(entered && { entered }),
    ...(own && { own }),
    ...(invented && { invented }),
    ...(opened !== undefined && { opened }),
    ...(ids && {
      ids: { origins: ids.origins, codes: Int32Array.from(ids.codes), numbers: Float64Array.from(ids.numbers) },
    }),
  };
}

const kinds = { number: 'number', string: 'text', date: 'date', boolean: 'boolean' } as const;

/** Reads a table by what its description says and nothing else, so that it is as it was written. */
function readPlain(csv: string, fields: Described['schema']['fields']): { columns: Columns; whole: boolean } {
  const columns = fields.map(({ name, type, unit }) => {
    const kind: Kind = kinds[type];
    return { name, title: name, kind, unit: kind === 'date' ? 'd' : (unit ?? '1'), headings: [] };
  });
  const schema: TableSchema = { name: 'table', columns, required: [], keys: [] };
  const read = readTable(csv, { schema });
  const found: Columns = Object.create(null);
  for (const { name, kind, unit } of columns) found[name] = read.columns[name] ?? noColumn(kind, unit);
  return {
    columns: found,
    whole: !read.problems.some(({ code }) => code === 'broken-quotes' || code === 'short-rows'),
  };
}

function noColumn(kind: Kind, unit: string): ColumnInput {
  return kind === 'text' ? TextColumn.from([]) : { kind, unit, values: new Float64Array(0) };
}

function readUnread(csv: string): Map<string, Map<string, Map<number, string>>> {
  const text = { type: 'string' } as const;
  const { columns } = readPlain(csv, [
    { name: 'table', ...text },
    { name: 'row', type: 'number' },
    { name: 'column', ...text },
    { name: 'text', ...text },
  ]);
  const [tables, names, texts] = ['table', 'column', 'text'].map((name) => columns[name] as TextColumn);
  const unread = new Map<string, Map<string, Map<number, string>>>();
  (columns.row.values as Float64Array).forEach((row, at) => {
    const table = unread.get(tables.at(at)) ?? new Map<string, Map<number, string>>();
    const cells = table.get(names.at(at)) ?? new Map<number, string>();
    unread.set(tables.at(at), table.set(names.at(at), cells.set(row - 1, texts.at(at))));
  });
  return unread;
}

function textOf(files: ReadonlyMap<string, Uint8Array>, path: string): string {
  const bytes = files.get(path);
  if (!bytes) throw new RecordError(say`The record has no file ${path}. Take an untouched copy`);
  return new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
}

function parsed<T>(text: string, path: string): T {
  try {
    return JSON.parse(text) as T;
  } catch {
    throw new RecordError(say`${path} is broken. Take an untouched copy of the record`);
  }
}

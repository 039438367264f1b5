import type { Compressors, FileMetaData, SchemaElement } from 'hyparquet';
import { type Column, type ColumnInput, type Kind, TextColumn } from '../../sheet/column.ts';
import { dayMs } from '../../sheet/days.ts';
import { say } from '../../words/say.ts';
import { namedColumns, type Writable } from '../writable.ts';
import { arrowSchemaKey, arrowSchemaText, fieldsOfArrowSchema } from './arrowSchema.ts';
import { isDay } from './isDay.ts';
import { type StoredTable, StoredTableError, storedTable } from './storedTable.ts';

/** As many rows as engines like to take in one piece. */
export const rowGroupSize = 122_880;

/**
 * A table as a Parquet file: numbers are doubles, dates `DATE`, yes and no `BOOLEAN`, text a dictionary, missing null.
 * Titles, units and formulas stand in the file's Arrow schema, where programs that know Arrow read them too.
 * @param table  columns, or a sheet: then computed columns keep their formulas
 * @throws TypeError for a column without a name
 * @source Apache Parquet format, version 2
 * @example await writeParquet({ toe_angle_deg: { unit: 'deg', values: Float64Array.of(52, NaN) } })
 */
export async function writeParquet(table: Writable): Promise<Uint8Array> {
  const [{ ByteWriter, ParquetWriter }, schemaText] = await Promise.all([
    import('hyparquet-writer'),
    arrowSchemaText(table),
  ]);
  const source = namedColumns(table);
  const stored = source.names.map((name) => storedColumn(name, source.column(name)));
  const bytes = new ByteWriter();
  const writer = new ParquetWriter({
    writer: bytes,
    schema: [{ name: 'root', num_children: stored.length }, ...stored.map(({ element }) => element)],
    kvMetadata: [{ key: arrowSchemaKey, value: schemaText }],
    createdBy: 'evenhoof',
  });
  const rows = stored.length === 0 ? 0 : stored[0].rows;
  for (let from = 0; from < rows; from += rowGroupSize) {
    const to = Math.min(rows, from + rowGroupSize);
    const columnData = stored.map(({ element: { name }, cells, encoding }) => ({
      name,
      encoding,
      data: cells(from, to),
    }));
    writer.write({ columnData, rowGroupSize });
  }
  writer.finish();
  return bytes.getBytes();
}

/**
 * The table of a Parquet file (uncompressed or Snappy, GZIP, ZSTD).
 * Whole numbers and decimals become doubles, times the days that they lie in, texts a dictionary.
 * @param bytes  the whole file
 * @param file  its name, for messages
 * @returns columns with titles and units where the file says them, and the formulas of those that were computed
 * @throws StoredTableError where it is no such file, or holds a column that is no list of numbers, dates, texts or yes and no
 * @example (await readParquet(bytes, 'feet.parquet')).columns.toe_angle_deg.values
 */
export async function readParquet(bytes: Uint8Array, file = 'The file'): Promise<StoredTable> {
  try {
    const { parquetMetadata, parquetRead } = await import('hyparquet');
    const buffer = wholeBuffer(bytes);
    const metadata = parquetMetadata(buffer);
    const fields = await fieldsOfArrowSchema(said(metadata, arrowSchemaKey) ?? '');
    const columns = kindsOf(metadata, file).map(({ name, kind }) => {
      const about = fields.get(name) ?? new Map<string, string>();
      // Days that 32 bits or whole numbers can't hold stand as doubles.
      const meant = kind === 'number' && about.get('kind') === 'date' ? 'date' : kind;
      return { name, about, cells: new Cells(meant, Number(metadata.num_rows)) };
    });
    const cellsOf = new Map(columns.map(({ name, cells }) => [name, cells]));
    await parquetRead({
      ...{ file: buffer, metadata, parsers, compressors: await compressorsFor(metadata) },
      onChunk: ({ columnName, columnData, rowStart }) => cellsOf.get(columnName)!.take(columnData, rowStart),
    });
    return storedTable(
      columns.map(({ cells, ...column }) => ({ ...column, column: cells.column() })),
      file,
    );
  } catch (error) {
    if (error instanceof StoredTableError) throw error;
    throw new StoredTableError(
      say`${file} could not be read as a Parquet file (${(error as Error).message}). Save it again with Snappy compression, or as CSV`,
    );
  }
}

// Writing

interface StoredColumn {
  readonly element: SchemaElement;
  readonly rows: number;
  readonly encoding?: 'PLAIN' | 'RLE_DICTIONARY';
  readonly cells: (from: number, to: number) => unknown[];
}

function storedColumn(name: string, column: Column): StoredColumn {
  const element = { name, repetition_type: 'OPTIONAL' } as const;
  if (column instanceof TextColumn)
    return {
      element: { ...element, type: 'BYTE_ARRAY', converted_type: 'UTF8', logical_type: { type: 'STRING' } },
      ...{ rows: column.codes.length, encoding: 'RLE_DICTIONARY' },
      cells: (from, to) =>
        Array.from(column.codes.subarray(from, to), (code) => (code < 0 ? null : column.levels[code])),
    };
  const { kind, values } = column;
  const cells = (from: number, to: number) =>
    Array.from(values.subarray(from, to), (value) =>
      Number.isNaN(value) ? null : kind === 'boolean' ? value === 1 : value,
    );
  const { length: rows } = values;
  if (kind === 'boolean') return { element: { ...element, type: 'BOOLEAN' }, rows, cells };
  if (kind === 'date' && values.every(isDay))
    return {
      element: { ...element, type: 'INT32', converted_type: 'DATE', logical_type: { type: 'DATE' } },
      ...{ rows, cells },
    };
  // A dictionary would take the two zeros for one.
  const encoding = values.some((value) => Object.is(value, -0)) ? 'PLAIN' : undefined;
  return { element: { ...element, type: 'DOUBLE' }, rows, cells, encoding };
}

// Reading

/** Days stay whole numbers, and moments become the day that they lie in. */
const parsers = {
  dateFromDays: (days: number) => days,
  timestampFromMilliseconds: (moment: bigint) => Math.floor(Number(moment) / dayMs),
  timestampFromMicroseconds: (moment: bigint) => Math.floor(Number(moment) / (1e3 * dayMs)),
  timestampFromNanoseconds: (moment: bigint) => Math.floor(Number(moment) / (1e6 * dayMs)),
};

function said({ key_value_metadata }: FileMetaData, key: string): string | undefined {
  return key_value_metadata?.find((pair) => pair.key === key)?.value;
}

function kindsOf({ schema }: FileMetaData, file: string): { name: string; kind: Kind }[] {
  return schema.slice(1).map((element) => {
    const kind = kindOf(element);
    if (kind === undefined)
      throw new StoredTableError(
        say`The column ${element.name} of ${file} holds neither numbers, dates, texts nor yes and no. Leave it out, and save the file again`,
      );
    return { name: element.name, kind };
  });
}

function kindOf({ type, converted_type, logical_type, repetition_type }: SchemaElement): Kind | undefined {
  const meant = `${converted_type ?? ''} ${logical_type?.type ?? ''}`;
  if (repetition_type === 'REPEATED' || /\b(TIME|TIME_\w+|JSON|BSON|INTERVAL|VARIANT|GEO\w+)\b/.test(meant))
    return undefined;
  if (type === 'INT96' || /\b(DATE|TIMESTAMP)/.test(meant)) return 'date';
  if (type === 'BOOLEAN') return 'boolean';
  if (type === 'BYTE_ARRAY' || logical_type?.type === 'UUID') return /DECIMAL/.test(meant) ? 'number' : 'text';
  // What has no type has columns of its own.
  return type === undefined || (type === 'FIXED_LEN_BYTE_ARRAY' && !/DECIMAL|FLOAT16/.test(meant))
    ? undefined
    : 'number';
}

/** One column as it is filled, row group by row group. */
class Cells {
  readonly #kind: Kind;
  readonly #values: Float64Array;
  readonly #codes: Int32Array;
  readonly #known = new Map<string, number>();

  constructor(kind: Kind, rows: number) {
    this.#kind = kind;
    this.#values = new Float64Array(kind === 'text' ? 0 : rows).fill(Number.NaN);
    this.#codes = new Int32Array(kind === 'text' ? rows : 0).fill(-1);
  }

  take(cells: ArrayLike<unknown>, from: number): void {
    for (let at = 0; at < cells.length; at++) {
      const cell = cells[at];
      // An empty text is a missing one.
      if (cell === null || cell === undefined || cell === '') continue;
      if (this.#kind === 'text') this.#codes[from + at] = this.#place(String(cell));
      else this.#values[from + at] = Number(cell);
    }
  }

  #place(text: string): number {
    const before = this.#known.get(text);
    if (before !== undefined) return before;
    this.#known.set(text, this.#known.size);
    return this.#known.size - 1;
  }

  column(): ColumnInput {
    if (this.#kind === 'text') return new TextColumn(this.#codes, [...this.#known.keys()]);
    return this.#kind === 'number' ? { values: this.#values } : { kind: this.#kind, values: this.#values };
  }
}

function wholeBuffer({ buffer, byteOffset, byteLength }: Uint8Array): ArrayBuffer {
  return byteOffset === 0 && buffer.byteLength === byteLength && buffer instanceof ArrayBuffer
    ? buffer
    : (buffer.slice(byteOffset, byteOffset + byteLength) as ArrayBuffer);
}

/** What unpacks what the file is packed with, besides Snappy, which every reader knows. */
async function compressorsFor({ row_groups }: FileMetaData): Promise<Compressors> {
  const used = new Set(row_groups.flatMap(({ columns }) => columns.map(({ meta_data }) => meta_data?.codec)));
  const found: Compressors = {};
  if (used.has('GZIP')) {
    const { gunzipSync } = await import('fflate');
    found.GZIP = (bytes) => gunzipSync(bytes);
  }
  if (used.has('ZSTD')) {
    const { decompress } = await import('fzstd');
    found.ZSTD = (bytes) => decompress(bytes);
  }
  return found;
}

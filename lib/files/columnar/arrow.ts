import type { Column as ArrowColumn, Batch, DataType, Field } from '@uwdata/flechette';
import { type Column, type ColumnInput, type NumberColumn, TextColumn } from '../../sheet/column.ts';
import { dayMs } from '../../sheet/days.ts';
import { say } from '../../words/say.ts';
import { namedColumns, type Writable } from '../writable.ts';
import { type StoredTable, StoredTableError, storedTable } from './storedTable.ts';

type Flechette = typeof import('@uwdata/flechette');

/**
 * A table as an Arrow file (IPC, uncompressed), which other programs map into memory as it is. Numbers are doubles, dates
 * `date32`, yes and no booleans, text a dictionary; missing is null. Titles, units and formulas are metadata of the fields.
 * The arrays of numbers are written as they stand in memory, and so are the codes of a text that misses nowhere.
 * @param table  columns, or a sheet: then computed columns keep their formulas
 * @throws TypeError for a column without a name
 * @source Apache Arrow columnar format, version 1.5
 * @example await writeArrow({ toe_angle_deg: { unit: 'deg', values: Float64Array.of(52, NaN) } })
 */
export async function writeArrow(table: Writable): Promise<Uint8Array> {
  const [flechette, { arrowFields }] = await Promise.all([import('@uwdata/flechette'), import('./arrowFields.ts')]);
  const fields = arrowFields(table);
  const source = namedColumns(table);
  const columns = fields.map(({ name, type }) => arrowColumn(flechette, source.column(name), type));
  const { Endianness, Table, tableToIPC, Version } = flechette;
  const schema = { version: Version.V5, endianness: Endianness.Little, fields, metadata: null };
  return tableToIPC(new Table(schema, columns), { format: 'file' })!;
}

/**
 * The table of an Arrow file or stream (IPC). Where it holds doubles in one batch, `NaN` or nothing missing, their array is
 * the file's own memory, and so are the codes of a text that misses nowhere. Whole numbers and decimals become doubles, times the days that
 * they lie in; a text is read into a dictionary where it has none.
 * @param bytes  the whole file
 * @param file  its name, for messages
 * @returns columns with titles and units where the file says them, and the formulas of those that were computed
 * @throws StoredTableError where it is no such file, or holds a column that is no list of numbers, dates, texts or yes and no
 * @example (await readArrow(bytes, 'feet.arrow')).columns.toe_angle_deg.values
 */
export async function readArrow(bytes: Uint8Array, file = 'The file'): Promise<StoredTable> {
  const flechette = await import('@uwdata/flechette');
  // Arrays of doubles begin at whole eights.
  const aligned = bytes.byteOffset % 8 === 0 ? bytes : bytes.slice();
  try {
    const { schema, children } = flechette.tableFromIPC(aligned);
    const read = schema.fields.map(({ name, metadata, type }, at) => ({
      ...{ name, about: metadata ?? new Map<string, string>() },
      column: columnFrom(flechette, { name, metadata, type }, children[at], file),
    }));
    return storedTable(read, file);
  } catch (error) {
    if (error instanceof StoredTableError) throw error;
    throw new StoredTableError(
      say`${file} could not be read as an Arrow file (${(error as Error).message}). Save it again uncompressed, or as CSV`,
    );
  }
}

// Writing

const nothing = new Uint8Array(0);

function arrowColumn(flechette: Flechette, column: Column, type: DataType): ArrowColumn<unknown> {
  const { Batch, Column: Made, Type } = flechette;
  if (column instanceof TextColumn) {
    const { codes, levels } = column;
    const { dictionary } = type as { dictionary: DataType } & DataType;
    const marked = validity(codes, (code) => code >= 0);
    // Some readers want a word under a missing one too.
    const values = marked.nullCount === 0 ? codes : codes.map((code) => Math.max(code, 0));
    const batch = new Batch({ ...marked, type, values });
    const words = new Made([textBatch(flechette, levels, dictionary)], dictionary);
    return new Made([Object.assign(batch, { dictionary: words })], type);
  }
  const { values } = column;
  const marked = { ...validity(values, (value) => !Number.isNaN(value)), type };
  if (type.typeId === Type.Bool)
    return new Made([new Batch({ ...marked, values: bits(values, (value) => value === 1) })]);
  return new Made([new Batch({ ...marked, values: type.typeId === Type.Date ? Int32Array.from(values) : values })]);
}

function textBatch({ Batch }: Flechette, texts: readonly string[], type: DataType): Batch<string> {
  const encoded = texts.map((text) => new TextEncoder().encode(text));
  const offsets = new Int32Array(texts.length + 1);
  for (const [at, { length }] of encoded.entries()) offsets[at + 1] = offsets[at] + length;
  const values = new Uint8Array(offsets[texts.length]);
  for (const [at, text] of encoded.entries()) values.set(text, offsets[at]);
  return new Batch({ length: texts.length, nullCount: 0, type, validity: nothing, offsets, values });
}

/** How many rows there are, how many of them are missing, and where any is, a bit a row that says which are not. */
function validity<T extends Float64Array | Int32Array>(values: T, present: (value: number) => boolean) {
  const { length } = values;
  let nullCount = 0;
  for (let row = 0; row < length; row++) if (!present(values[row])) nullCount++;
  return { length, nullCount, validity: nullCount === 0 ? nothing : bits(values, present) };
}

function bits(values: Float64Array | Int32Array, of: (value: number) => boolean): Uint8Array {
  // As long as readers ask that any array is.
  const packed = new Uint8Array(Math.ceil(values.length / 64) * 8);
  for (let row = 0; row < values.length; row++) if (of(values[row])) packed[row >> 3] |= 1 << (row & 7);
  return packed;
}

// Reading

function columnFrom(
  { Type }: Flechette,
  { name, type, metadata }: Pick<Field, 'name' | 'type' | 'metadata'>,
  column: ArrowColumn<unknown>,
  file: string,
): ColumnInput {
  switch (type.typeId === Type.Dictionary && isText(Type, type.dictionary) ? 'words' : type.typeId) {
    case 'words':
      return textFromCodes(column.data as readonly DictionaryBatch[]);
    case Type.Utf8:
    case Type.LargeUtf8:
    case Type.Utf8View:
      return TextColumn.from(Array.from(column, (text) => (text as string | null) ?? ''));
    case Type.Float: {
      const values = numbersFrom(column);
      const { kind } = { kind: metadata?.get('kind') };
      return kind === 'date' || kind === 'boolean' ? { kind, values } : { values };
    }
    case Type.Null:
    case Type.Int:
    case Type.Decimal:
      return { values: numbersFrom(column) };
    case Type.Bool:
      return { kind: 'boolean', values: numbersFrom(column) };
    case Type.Date:
    case Type.Timestamp:
      return { kind: 'date', values: numbersFrom(column).map((moment) => Math.floor(moment / dayMs)) };
    default:
      throw new StoredTableError(
        say`The column ${name} of ${file} holds neither numbers, dates, texts nor yes and no. Leave it out, and save the file again`,
      );
  }
}

function isText(Type: Flechette['Type'], type: DataType): boolean {
  return type.typeId === Type.Utf8 || type.typeId === Type.LargeUtf8 || type.typeId === Type.Utf8View;
}

/** Numbers with `NaN` for missing: the file's own array where it stands there so. */
function numbersFrom({ data, length }: ArrowColumn<unknown>): NumberColumn['values'] {
  const [first] = data;
  if (data.length === 1 && first.values instanceof Float64Array && restAreNaN(first))
    return first.values.subarray(0, length);
  const values = new Float64Array(length);
  let row = 0;
  for (const batch of data)
    for (let at = 0; at < batch.length; at++) {
      const value = batch.at(at);
      values[row++] = value === null ? Number.NaN : Number(value);
    }
  return values;
}

interface DictionaryBatch extends Batch<string> {
  readonly cache: readonly (string | null)[];
  key(row: number): number;
}

/** Text over one dictionary, whatever dictionaries the batches have. */
function textFromCodes(data: readonly DictionaryBatch[]): TextColumn {
  const known = new Map<string, number>();
  const places = new Map<DictionaryBatch['cache'], Int32Array>();
  for (const { cache } of data)
    if (!places.has(cache))
      places.set(
        cache,
        Int32Array.from(cache, (text) => place(text, known)),
      );
  const levels = [...known.keys()];
  const [first] = data;
  const whole = data.length === 1 && first.nullCount === 0 && levels.length === first.cache.length;
  if (whole && first.values instanceof Int32Array)
    return new TextColumn((first.values as unknown as Int32Array).subarray(0, first.length), levels);
  const codes = new Int32Array(data.reduce((rows, { length }) => rows + length, 0)).fill(-1);
  let row = 0;
  for (const batch of data) {
    const own = places.get(batch.cache)!;
    for (let at = 0; at < batch.length; at++, row++)
      if (batch.nullCount === 0 || batch.isValid(at)) codes[row] = own[batch.key(at)];
  }
  return new TextColumn(codes, levels);
}

/** An empty text is a missing one. */
function place(text: string | null, known: Map<string, number>): number {
  if (text === null || text === '') return -1;
  const before = known.get(text);
  if (before !== undefined) return before;
  known.set(text, known.size);
  return known.size - 1;
}

/** Whether `NaN` stands in every row that has no value. */
function restAreNaN({ nullCount, length, values, validity }: Batch<unknown>): boolean {
  if (nullCount === 0) return true;
  const [numbers, present] = [values as unknown as Float64Array, validity as Uint8Array];
  for (let row = 0; row < length; row++)
    if ((present[row >> 3] & (1 << (row & 7))) === 0 && !Number.isNaN(numbers[row])) return false;
  return true;
}

import type { Writable } from '../writable.ts';

/** Where programs that know Arrow look in a Parquet file. */
export const arrowSchemaKey = 'ARROW:schema';

/** What a stream ends with. */
const endLength = 8;

/**
 * The Arrow schema of a table as Parquet files carry it: the message in base 64.
 * @source Apache Arrow, C++ implementation, reading and writing Parquet, "Serialization details"
 */
export async function arrowSchemaText(table: Writable): Promise<string> {
  const [flechette, { arrowFields }] = await Promise.all([import('@uwdata/flechette'), import('./arrowFields.ts')]);
  const { Column, Endianness, Table, tableToIPC, Version } = flechette;
  const fields = arrowFields(table);
  const schema = { version: Version.V5, endianness: Endianness.Little, fields, metadata: null };
  const none = fields.map(({ type }) => new Column([], type));
  const stream = tableToIPC(new Table(schema, none), { format: 'stream' })!;
  return btoa(Array.from(stream.subarray(0, -endLength), (byte) => String.fromCharCode(byte)).join(''));
}

/** What such a schema says of each column; nothing where it can't be read, because the file can do without. */
export async function fieldsOfArrowSchema(text: string): Promise<Map<string, ReadonlyMap<string, string>>> {
  const { tableFromIPC } = await import('@uwdata/flechette');
  try {
    const message = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const { fields } = tableFromIPC(message).schema;
    return new Map(fields.map(({ name, metadata }) => [name, metadata ?? new Map()]));
  } catch {
    return new Map();
  }
}

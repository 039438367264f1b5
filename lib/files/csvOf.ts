const magic = {
  parquet: [0x50, 0x41, 0x52, 0x31],
  arrow: [0x41, 0x52, 0x52, 0x4f, 0x57, 0x31],
  stream: [0xff, 0xff, 0xff, 0xff],
};

/** Which of the formats that know their columns' types a file is in, by its first bytes. */
export function columnarFormat(bytes: Uint8Array): 'arrow' | 'parquet' | undefined {
  const begins = (with_: readonly number[]) => with_.every((byte, at) => bytes[at] === byte);
  if (begins(magic.parquet)) return 'parquet';
  return begins(magic.arrow) || begins(magic.stream) ? 'arrow' : undefined;
}

/**
 * The text of a table: that of an Arrow or Parquet file as CSV, so that its headings and words are understood in the same
 * way; any other file as it is.
 * @param file  its name, for messages
 * @throws StoredTableError where such a file can't be read
 */
export async function csvOf(bytes: Uint8Array, file: string): Promise<Uint8Array> {
  const format = columnarFormat(bytes);
  if (format === undefined) return bytes;
  const [{ readColumnar }, { tableChunks }] = await Promise.all([
    import('./columnar/readColumnar.ts'),
    import('./writeTable.ts'),
  ]);
  const { columns } = await readColumnar(bytes, format, file);
  return new Uint8Array(await new Blob([...tableChunks(columns)]).arrayBuffer());
}

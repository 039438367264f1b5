/** The earliest moment that a zip can name, the same wherever it is written. */
const FIXED = new Date(1980, 0, 1);

/**
 * Files as one zip, the same bytes for the same files, whenever and wherever it is written.
 * @param files  by their paths, in order
 * @param packed  whether a file is packed already, so that packing it again gains nothing
 * @example await zipped([['feet.csv', new TextEncoder().encode('horse_id\n')]])
 */
export async function zipped(
  files: Iterable<readonly [path: string, bytes: Uint8Array]>,
  packed: (path: string) => boolean = () => false,
): Promise<Uint8Array> {
  const { zipSync } = await import('fflate');
  const inside = [...files].map(
    ([path, bytes]) => [path, [bytes, { level: packed(path) ? 0 : 6, mtime: FIXED, os: 0 }]] as const,
  );
  return zipSync(Object.fromEntries(inside) as Parameters<typeof zipSync>[0]);
}

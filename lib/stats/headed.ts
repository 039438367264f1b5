/** The first thing in every head. */
interface Format {
  readonly format: string;
}

/**
 * Bytes behind a head: its length as 32 bits with the lowest byte first, then the head as JSON, spaces up to a multiple of 8, and the
 * bytes.
 * @param head  plain data that says in `format` what the bytes are, and all that is needed to take them apart
 */
export function headed(head: Format, parts: readonly Uint8Array[]): Uint8Array {
  const text = new TextEncoder().encode(JSON.stringify(head));
  const start = 8 * Math.ceil((4 + text.length) / 8);
  const bytes = new Uint8Array(start + parts.reduce((sum, { length }) => sum + length, 0)).fill(0x20, 0, start);
  new DataView(bytes.buffer).setUint32(0, start - 4, true);
  bytes.set(text, 4);
  let at = start;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/**
 * The head and the bytes behind it.
 * @param lengthOf  how many bytes must be there, by the head
 * @throws TypeError where these aren't such bytes, or not all of them
 */
export function beheaded<Head extends Format>(
  bytes: Uint8Array,
  format: string,
  lengthOf: (head: Head) => number,
): { head: Head; body: Uint8Array } {
  const refused = (what: string) =>
    new TypeError(`These are no saved sums: ${what}. Load the bytes that save() gave, all of them`);
  if (bytes.length < 4) throw refused('they are too short');
  const start = 4 + new DataView(bytes.buffer, bytes.byteOffset).getUint32(0, true);
  if (start > bytes.length) throw refused('they end too early');
  const head = parsed(bytes.subarray(4, start)) as Head | undefined;
  if (head?.format !== format) throw refused(`they don’t begin with ${format}`);
  // Not a part of the same kind: Node's buffers, which files are read into, copy nothing in `slice`.
  const body = new Uint8Array(bytes.buffer, bytes.byteOffset + start, bytes.length - start);
  const expected = lengthOf(head);
  if (body.length !== expected) throw refused(`${body.length} bytes follow the head and not ${expected}`);
  return { head, body };
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}

/** How the bytes of a file stand for letters. */
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

export interface Decoded {
  /** UTF-8 that ends with a line end, so that a reader of cells needs no check for the end of the file. */
  readonly bytes: Uint8Array;
  /** Where the text begins: after a byte order mark. */
  readonly start: number;
  readonly encoding: Encoding;
}

const LF = 10;
const CR = 13;

/**
 * The text of a file as UTF-8. Told by a byte order mark; else by the zero bytes of UTF-16; else UTF-8 where the bytes are
 * valid UTF-8; else windows-1252, in which old spreadsheets save.
 * @param source  a file's bytes, which are not changed, or its text
 * @example decode(Uint8Array.of(0x35, 0x32, 0xb0)).encoding // 'windows-1252'
 */
export function decode(source: string | Uint8Array): Decoded {
  if (typeof source === 'string') return utf8(new TextEncoder().encode(source));
  if (source[0] === 0xff && source[1] === 0xfe) return recode(source, 'utf-16le');
  if (source[0] === 0xfe && source[1] === 0xff) return recode(source, 'utf-16be');
  const wide = zeroBytes(source);
  if (wide !== undefined) return recode(source, wide);
  return isUtf8(source) ? utf8(source) : recode(source, 'windows-1252');
}

function utf8(bytes: Uint8Array): Decoded {
  const start = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  return { bytes: withLineEnd(bytes), start, encoding: 'utf-8' };
}

function recode(bytes: Uint8Array, encoding: Encoding): Decoded {
  const text = new TextDecoder(encoding).decode(bytes);
  return { bytes: withLineEnd(new TextEncoder().encode(text)), start: 0, encoding };
}

function withLineEnd(bytes: Uint8Array): Uint8Array {
  const last = bytes[bytes.length - 1];
  if (last === LF || last === CR) return bytes;
  const longer = new Uint8Array(bytes.length + 1);
  longer.set(bytes);
  longer[bytes.length] = LF;
  return longer;
}

/** UTF-16 without a mark: in text that is mostly ASCII every other byte is zero. */
function zeroBytes(bytes: Uint8Array): Encoding | undefined {
  const length = Math.min(bytes.length, 1024) & ~1;
  const zeros = [0, 0];
  for (let i = 0; i < length; i++) if (bytes[i] === 0) zeros[i & 1]++;
  if (zeros[1] * 4 > length && zeros[0] * 8 < zeros[1]) return 'utf-16le';
  if (zeros[0] * 4 > length && zeros[1] * 8 < zeros[0]) return 'utf-16be';
  return undefined;
}

/** Whether bytes are UTF-8 from their first to their last. */
export function isUtf8(bytes: Uint8Array): boolean {
  return isAscii(bytes) || decodes(bytes);
}

/** Sixteen bytes at a time: most files are ASCII, and this is far quicker than decoding them. */
function isAscii(bytes: Uint8Array): boolean {
  const head = Math.min(-bytes.byteOffset & 3, bytes.length);
  const words = new Uint32Array(bytes.buffer, bytes.byteOffset + head, (bytes.length - head) >> 2);
  let seen = 0;
  let next = 0;
  for (; next + 4 <= words.length; next += 4) seen |= words[next] | words[next + 1] | words[next + 2] | words[next + 3];
  for (; next < words.length; next++) seen |= words[next];
  for (let i = 0; i < head; i++) seen |= bytes[i];
  for (let i = head + words.length * 4; i < bytes.length; i++) seen |= bytes[i];
  return (seen & 0x80808080) === 0;
}

/** In pieces, so that no second copy of a large file is made. */
function decodes(bytes: Uint8Array): boolean {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  const piece = 1 << 20;
  try {
    for (let i = 0; i < bytes.length; i += piece) decoder.decode(bytes.subarray(i, i + piece), { stream: true });
    decoder.decode();
    return true;
  } catch {
    return false;
  }
}

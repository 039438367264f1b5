import { type PackedColumn, packed, unpacked } from './packed.ts';
import type { KeptTable, KeptTables } from './tables.ts';

const KEY = 'evenhoof left behind';

/**
 * Leaves tables for the next page, at once: what is asked of the database while a page is being left may never be done.
 * @returns whether there was room; the browser's storage for text is small
 */
export function leaveBehind(tables: KeptTables): boolean {
  try {
    localStorage.setItem(KEY, JSON.stringify(tables, written));
    return true;
  } catch {
    return false;
  }
}

/** The tables that a page left behind, newer than any in the database; `undefined` where none did. */
export function leftBehind(): KeptTables | undefined {
  try {
    const text = localStorage.getItem(KEY);
    return text === null ? undefined : JSON.parse(text, read);
  } catch {
    return undefined;
  }
}

/** Takes it away once it is in the database, or something newer is. */
export function forgetLeftBehind(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Where nothing can be kept nothing was left.
  }
}

/** What JSON has no form for, marked by its kind. */
type Marked =
  | readonly ['numbers', bytes: string]
  | readonly ['codes', bytes: string]
  | readonly ['map', entries: readonly (readonly [unknown, unknown])[]]
  | readonly ['columns', entries: readonly (readonly [string, PackedColumn])[]];

function written(name: string, value: unknown): unknown {
  if (value instanceof Float64Array) return { marked: ['numbers', base64(value)] satisfies Marked };
  if (value instanceof Int32Array) return { marked: ['codes', base64(value)] satisfies Marked };
  if (value instanceof Map) return { marked: ['map', [...value]] satisfies Marked };
  if (name === 'columns') {
    const columns = Object.entries(value as KeptTable['columns']);
    return { marked: ['columns', columns.map(([column, kept]) => [column, packed(kept)] as const)] satisfies Marked };
  }
  return value;
}

function read(_: string, value: unknown): unknown {
  const marked = (value as { marked?: Marked } | null)?.marked;
  if (!Array.isArray(marked)) return value;
  const [kind, content] = marked as Marked;
  switch (kind) {
    case 'numbers':
      return new Float64Array(bytes(content).buffer);
    case 'codes':
      return new Int32Array(bytes(content).buffer);
    case 'map':
      return new Map(content);
    case 'columns': {
      const columns: Record<string, unknown> = Object.create(null);
      for (const [name, column] of content) columns[name] = unpacked(column);
      return columns;
    }
  }
}

const PIECE = 0x8000;

function base64({ buffer, byteOffset, byteLength }: Float64Array | Int32Array): string {
  const all = new Uint8Array(buffer, byteOffset, byteLength);
  let text = '';
  for (let at = 0; at < all.length; at += PIECE) text += String.fromCharCode(...all.subarray(at, at + PIECE));
  return btoa(text);
}

const bytes = (text: string) => Uint8Array.from(atob(text), (character) => character.charCodeAt(0));

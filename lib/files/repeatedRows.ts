import { type Column, TextColumn } from '../sheet/column.ts';
import { groupRows } from '../sheet/groups.ts';

/** So many bits for each row are less memory than the columns of most files. */
const bitsPerRow = 256;

/**
 * Rows that have the same keys as a row before them.
 * @param complete  keys that must not be missing for a row to count
 * @returns pairs of a row and the first row like it, both from 0
 */
export function repeatedRows(
  keys: readonly Column[],
  complete: readonly Column[],
  rows: number,
): { row: number; first: number }[] {
  if (surelyDistinct(keys, rows)) return [];
  const { codes, count } = groupRows(keys, rows);
  const firsts = new Int32Array(count).fill(-1);
  const pairs: { row: number; first: number }[] = [];
  for (let row = 0; row < rows; row++) {
    if (complete.some((column) => isMissingAt(column, row))) continue;
    const first = firsts[codes[row]];
    if (first < 0) firsts[codes[row]] = row;
    else pairs.push({ row, first });
  }
  return pairs;
}

/** Gives a bit to each combination of keys that could be, and looks whether two rows meet; no where that takes too many bits. */
function surelyDistinct(keys: readonly Column[], rows: number): boolean {
  const places = new Int32Array(rows);
  let size = 1;
  for (const key of keys) {
    const text = key instanceof TextColumn;
    const [low, high] = text ? [0, key.levels.length - 1] : wholeRange(key.values);
    // A missing key is a key like any other.
    const choices = Math.max(high - low, -1) + 2;
    size *= choices;
    if (!(size <= Math.min(bitsPerRow * rows, 2 ** 31))) return false;
    if (text) addCodes(places, choices, key.codes);
    else addNumbers(places, choices, key.values, low);
  }
  return areDistinct(places, size);
}

function addCodes(places: Int32Array, choices: number, codes: Int32Array): void {
  for (let row = 0; row < places.length; row++) places[row] = places[row] * choices + codes[row] + 1;
}

function addNumbers(places: Int32Array, choices: number, values: Float64Array, low: number): void {
  for (let row = 0; row < places.length; row++) {
    const value = values[row];
    places[row] = places[row] * choices + (Number.isNaN(value) ? 0 : value - low + 1);
  }
}

function areDistinct(places: Int32Array, size: number): boolean {
  const seen = new Uint8Array((size >> 3) + 1);
  for (let row = 0; row < places.length; row++) {
    const place = places[row];
    const at = place >> 3;
    const before = seen[at];
    const after = before | (1 << (place & 7));
    if (after === before) return false;
    seen[at] = after;
  }
  return true;
}

/** The smallest and the largest of some numbers; endless where one of them is not whole. */
function wholeRange(values: Float64Array): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < values.length; row++) {
    const value = values[row];
    if (value < low) low = value;
    if (value > high) high = value;
    if (Math.floor(value) !== value && !Number.isNaN(value))
      return [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  }
  return [low, high];
}

function isMissingAt(column: Column, row: number): boolean {
  return column instanceof TextColumn ? column.codes[row] < 0 : Number.isNaN(column.values[row]);
}

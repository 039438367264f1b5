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
  // Rows near each other mostly differ in their last keys, and so their bits are near each other too.
  for (const key of keys.toReversed()) {
    if (key instanceof TextColumn) {
      addCodes(places, size, key.codes);
      size *= key.levels.length + 1;
    } else size *= addNumbers(places, size, key.values);
    if (size > Math.min(bitsPerRow * rows, 2 ** 31)) return false;
  }
  return areDistinct(places, size);
}

function addCodes(places: Int32Array, step: number, codes: Int32Array): void {
  for (let row = 0; row < places.length; row++) places[row] += Math.imul(codes[row] + 1, step);
}

/** Returns how many choices there are; missing is one like any other. */
function addNumbers(places: Int32Array, step: number, values: Float64Array): number {
  const known = new Map<number, number>();
  let before = Number.NaN;
  let place = 0;
  for (let row = 0; row < places.length; row++) {
    const value = values[row];
    if (Number.isNaN(value)) continue;
    if (value !== before) {
      before = value;
      if (!known.has(value)) known.set(value, Math.imul(known.size + 1, step));
      place = known.get(value)!;
    }
    places[row] += place;
  }
  return known.size + 1;
}

function areDistinct(places: Int32Array, size: number): boolean {
  const seen = new Int32Array((size >>> 5) + 1);
  for (let row = 0; row < places.length; row++) {
    const place = places[row];
    const at = place >>> 5;
    const before = seen[at];
    const after = before | (1 << (place & 31));
    if (after === before) return false;
    seen[at] = after;
  }
  return true;
}

function isMissingAt(column: Column, row: number): boolean {
  return column instanceof TextColumn ? column.codes[row] < 0 : Number.isNaN(column.values[row]);
}

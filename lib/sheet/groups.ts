import { type Column, TextColumn } from './column.ts';
import type { Groups } from './table.ts';

/**
 * Sorts rows into groups by their values in some columns. Groups are numbered in the order of their first rows.
 * A missing key is a key like any other; without columns all rows are one group.
 * @param rows  how many rows the columns have
 * @example groupRows([TextColumn.from(['LF', 'RF', 'LF'])], 3) // { codes: [0, 1, 0], count: 2 }
 */
export function groupRows(columns: readonly Column[], rows: number): Groups {
  // Worked on in place: a fresh array of a million costs more than a pass over it.
  const codes = new Int32Array(rows);
  let left: Key = { codes, low: 0, size: Math.min(rows, 1) };
  columns.forEach((column, index) => {
    const right = column instanceof TextColumn ? textKey(column) : numberKey(column.values);
    left = index === 0 && columns.length > 1 ? right : { codes, low: 0, size: numbered(codes, left, right) };
  });
  return { codes, count: left.size };
}

/** Codes from `low` to before `low + size`, some of which no row may have. */
interface Key {
  readonly codes: Int32Array;
  readonly low: number;
  readonly size: number;
}

/** Up to here a table of all codes is faster than a map, and not larger than the columns. */
function tableSize(rows: number): number {
  return 4 * rows + 1024;
}

function textKey({ codes, levels }: TextColumn): Key {
  return { codes, low: -1, size: levels.length + 1 };
}

function numberKey(values: Float64Array): Key {
  const rows = values.length;
  const codes = new Int32Array(rows);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let whole = true;
  for (let row = 0; row < rows; row++) {
    const value = values[row];
    if (value < low) low = value;
    if (value > high) high = value;
    if (Math.floor(value) !== value && !Number.isNaN(value)) whole = false;
  }
  // Days, counts and the like are their own codes.
  if (whole && high - low < tableSize(rows)) {
    for (let row = 0; row < rows; row++) codes[row] = Number.isNaN(values[row]) ? 0 : values[row] - low + 1;
    return { codes, low: 0, size: Math.max(high - low + 2, 1) };
  }
  const known = new Map<number, number>();
  for (let row = 0; row < rows; row++) codes[row] = codeOf(known, values[row]);
  return { codes, low: 0, size: known.size };
}

function codeOf(known: Map<number, number>, value: number): number {
  const before = known.get(value);
  if (before !== undefined) return before;
  known.set(value, known.size);
  return known.size - 1;
}

/** The pairs that rows have, numbered in the order of their first rows; returns how many. */
function numbered(codes: Int32Array, left: Key, right: Key): number {
  const [a, b] = [left.codes, right.codes];
  const { size } = right;
  const low = left.low * size + right.low;
  const rows = codes.length;
  if (left.size * size > tableSize(rows)) {
    const known = new Map<number, number>();
    for (let row = 0; row < rows; row++) codes[row] = codeOf(known, a[row] * size + b[row] - low);
    return known.size;
  }
  const known = new Int32Array(left.size * size);
  let count = 0;
  for (let row = 0; row < rows; row++) {
    const pair = a[row] * size + b[row] - low;
    let code = known[pair];
    if (code === 0) {
      code = ++count;
      known[pair] = code;
    }
    codes[row] = code - 1;
  }
  return count;
}

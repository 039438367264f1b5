import { type Column, TextColumn } from './column.ts';
import type { Groups } from './table.ts';

/**
 * Sorts rows into groups by their values in some columns. Groups are numbered in the order of their first rows.
 * A missing key is a key like any other; without columns all rows are one group.
 * @param rows  how many rows the columns have
 * @example groupRows([TextColumn.from(['LF', 'RF', 'LF'])], 3) // { codes: [0, 1, 0], count: 2 }
 */
export function groupRows(columns: readonly Column[], rows: number): Groups {
  let groups: Groups = { codes: new Int32Array(rows), count: Math.min(rows, 1) };
  for (const column of columns) {
    const key = column instanceof TextColumn ? textKey(column) : numberKey(column.values);
    groups = crossed(groups, key);
  }
  return groups;
}

/** Codes from 0, where 0 may be a code that no row has. */
function textKey({ codes, levels }: TextColumn): Groups {
  return { codes: codes.map((code) => code + 1), count: levels.length + 1 };
}

function numberKey(values: Float64Array): Groups {
  const known = new Map<number, number>();
  const codes = new Int32Array(values.length);
  for (let row = 0; row < values.length; row++) {
    let code = known.get(values[row]);
    if (code === undefined) {
      code = known.size;
      known.set(values[row], code);
    }
    codes[row] = code;
  }
  return { codes, count: known.size };
}

/** Groups by both, numbered anew. */
function crossed(a: Groups, b: Groups): Groups {
  const rows = a.codes.length;
  const codes = new Int32Array(rows);
  const size = a.count * b.count;
  let count = 0;
  if (size <= 4 * rows + 1024) {
    const known = new Int32Array(size);
    for (let row = 0; row < rows; row++) {
      const pair = a.codes[row] * b.count + b.codes[row];
      let code = known[pair];
      if (code === 0) {
        code = ++count;
        known[pair] = code;
      }
      codes[row] = code - 1;
    }
    return { codes, count };
  }
  const known = new Map<number, number>();
  for (let row = 0; row < rows; row++) {
    const pair = a.codes[row] * b.count + b.codes[row];
    let code = known.get(pair);
    if (code === undefined) {
      code = count++;
      known.set(pair, code);
    }
    codes[row] = code;
  }
  return { codes, count };
}

import { type Column, type ColumnInput, TextColumn, toColumn } from './column.ts';

/** The rows of a column in a given order; a row of -1 is missing. Errors go with their values. */
export function gather(input: ColumnInput | Column, rows: ArrayLike<number>): Column {
  const column = toColumn(input);
  if (column instanceof TextColumn) {
    const codes = new Int32Array(rows.length);
    for (let i = 0; i < codes.length; i++) codes[i] = rows[i] < 0 ? -1 : column.codes[rows[i]];
    return new TextColumn(codes, column.levels);
  }
  const { kind, unit, error } = column;
  return { kind, unit, values: pick(column.values, rows), error: error && pick(error, rows) };
}

function pick(values: Float64Array, rows: ArrayLike<number>): Float64Array {
  const picked = new Float64Array(rows.length);
  for (let i = 0; i < picked.length; i++) picked[i] = rows[i] < 0 ? Number.NaN : values[rows[i]];
  return picked;
}

import { type Column, type ColumnInput, type NumberColumn, TextColumn, toColumn } from './column.ts';

/** A column as plain data, which can be copied and kept. */
export function asInput(column: ColumnInput): ColumnInput {
  const { kind, unit, values, error } = column;
  return { kind, unit, values, ...(error && { error }) };
}

/** Some rows of a column, as they are kept with an edit. */
export function rowsOf(column: Column, rows: readonly number[]): ColumnInput {
  if (column.kind === 'text') return { kind: 'text', values: rows.map((row) => column.at(row)) };
  const { kind, unit, error } = column;
  const picked = (from: Float64Array) => Float64Array.from(rows, (row) => from[row]);
  return { kind, unit, values: picked(column.values), ...(error && { error: picked(error) }) };
}

/**
 * A column with more rows.
 * @param rows  where the new rows stand afterwards, ascending
 * @param added  their values in that order; left out, they are missing
 */
export function withRows(column: Column, rows: readonly number[], added?: ColumnInput): Column {
  if (column.kind === 'text') {
    const more = TextColumn.from((added?.values as readonly string[]) ?? rows.map(() => ''));
    const levels = column.levels.concat(more.levels.filter((level) => !column.levels.includes(level)));
    const codeOf = more.levels.map((level) => levels.indexOf(level));
    const codes = Int32Array.from(more.codes, (code) => (code < 0 ? -1 : codeOf[code]));
    return new TextColumn(
      inserted(column.codes, rows, codes, new Int32Array(column.codes.length + rows.length)),
      levels,
    );
  }
  const more = added && (toColumn(added) as NumberColumn);
  const missing = new Float64Array(rows.length).fill(Number.NaN);
  const length = column.values.length + rows.length;
  const values = inserted(column.values, rows, more?.values ?? missing, new Float64Array(length));
  const { kind, unit } = column;
  if (!column.error && !more?.error) return { kind, unit, values };
  const old = column.error ?? new Float64Array(column.values.length).fill(Number.NaN);
  return { kind, unit, values, error: inserted(old, rows, more?.error ?? missing, new Float64Array(length)) };
}

/** A column without some rows, given ascending. */
export function withoutRows(column: Column, rows: readonly number[]): Column {
  if (column.kind === 'text')
    return new TextColumn(
      removed(column.codes, rows, new Int32Array(column.codes.length - rows.length)),
      column.levels,
    );
  const { kind, unit, error } = column;
  const left = (from: Float64Array) => removed(from, rows, new Float64Array(from.length - rows.length));
  return { kind, unit, values: left(column.values), ...(error && { error: left(error) }) };
}

function inserted<T extends Float64Array | Int32Array>(old: T, rows: readonly number[], added: T, into: T): T {
  let from = 0;
  let to = 0;
  for (let i = 0; i < rows.length; i++) {
    const kept = rows[i] - to;
    into.set(old.subarray(from, from + kept), to);
    from += kept;
    to = rows[i];
    into[to++] = added[i];
  }
  into.set(old.subarray(from), to);
  return into;
}

function removed<T extends Float64Array | Int32Array>(old: T, rows: readonly number[], into: T): T {
  let from = 0;
  let to = 0;
  for (const row of rows) {
    into.set(old.subarray(from, row), to);
    to += row - from;
    from = row + 1;
  }
  into.set(old.subarray(from), to);
  return into;
}

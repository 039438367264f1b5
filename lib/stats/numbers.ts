/** Numbers as anyone may hand them in. `NaN` is missing; so is `null`, which is how JSON writes it. */
export type Numbers = ArrayLike<number>;

/** Whether a value is missing. */
export function isMissing(value: number): boolean {
  return value === null || Number.isNaN(value);
}

/**
 * The numbers that are there, in order, in a fresh array that may be sorted in place.
 * @param values any numbers; a missing one is left out
 * @example present([3, NaN, 1]) // [3, 1]
 */
export function present(values: Numbers): Float64Array {
  const kept = new Float64Array(values.length);
  let count = 0;
  for (let i = 0; i < values.length; i++) if (!isMissing(values[i])) kept[count++] = values[i];
  return count === kept.length ? kept : kept.slice(0, count);
}

/**
 * The rows in which every one of several columns of one length has a number, in order, in fresh arrays.
 * @param columns numbers of one length; the message of the `TypeError` names both lengths where they differ
 * @returns `columns` without the rows where any is missing, and `missing`, how many rows those were
 * @example presentRows([[1, NaN, 3], [4, 5, 6]]) // { columns: [[1, 3], [4, 6]], missing: 1 }
 */
export function presentRows(columns: readonly Numbers[]): { columns: Float64Array[]; missing: number } {
  const rows = columns.length === 0 ? 0 : columns[0].length;
  for (const column of columns)
    if (column.length !== rows)
      throw new TypeError(`Columns of one length were expected, found ${rows} and ${column.length} values`);
  const kept = columns.map(() => new Float64Array(rows));
  let count = 0;
  for (let row = 0; row < rows; row++) {
    if (columns.some((column) => isMissing(column[row]))) continue;
    for (let c = 0; c < columns.length; c++) kept[c][count] = columns[c][row];
    count++;
  }
  return { columns: kept.map((column) => column.slice(0, count)), missing: rows - count };
}

import { type Column, type ColumnInput, type Columns, TextColumn, toColumn } from '../sheet/column.ts';
import type { Groups } from '../sheet/table.ts';

/**
 * One row a group of rows: repeats averaged.
 * @param columns  of one table
 * @param groups  for each row its group
 * @returns the same columns with one row a group. Numbers are the means of what is there, their errors those of such
 *   means of independent readings (`NaN` where one of them is unknown); yes and no are yes where one reading says so;
 *   text and dates are the first that is there. A column `readings` says how many rows each is made of.
 * @example average({ x: { values: Float64Array.of(50, 52) } }, { codes: Int32Array.of(0, 0), count: 1 }).x.values // [51]
 */
export function average(columns: Columns, groups: Groups): Columns {
  const single = groups.count === groups.codes.length && groups.codes.every((code, row) => code === row);
  const averaged: Columns = Object.create(null);
  for (const [name, input] of Object.entries(columns))
    averaged[name] = single ? input : combined(toColumn(input), groups);
  const readings = new Float64Array(groups.count);
  for (const code of groups.codes) readings[code]++;
  averaged.readings = { unit: '1', values: readings };
  return averaged;
}

function combined(column: Column, groups: Groups): ColumnInput {
  if (column instanceof TextColumn) return firstWord(column, groups);
  const { kind, unit, values, error } = column;
  if (kind === 'number') return { kind, unit, ...means(values, error, groups) };
  return { kind, unit, values: (kind === 'boolean' ? anyYes : firstOf)(values, groups) };
}

/**
 * The means of what is there in each group, with the errors of such means of independent readings.
 * @param groups  rows of group -1 are left out
 */
export function means(
  values: Float64Array,
  error: Float64Array | undefined,
  { codes, count }: Groups,
): { values: Float64Array; error?: Float64Array } {
  const sums = new Float64Array(count);
  const squares = new Float64Array(count);
  const counts = new Float64Array(count);
  for (let row = 0; row < values.length; row++) {
    if (Number.isNaN(values[row]) || codes[row] < 0) continue;
    sums[codes[row]] += values[row];
    counts[codes[row]]++;
    if (error) squares[codes[row]] += error[row] ** 2;
  }
  return {
    values: sums.map((sum, group) => sum / counts[group]),
    error: error && squares.map((square, group) => Math.sqrt(square) / counts[group]),
  };
}

function anyYes(values: Float64Array, { codes, count }: Groups): Float64Array {
  const result = new Float64Array(count).fill(Number.NaN);
  for (let row = 0; row < values.length; row++)
    if (Number.isNaN(result[codes[row]]) || values[row] > result[codes[row]]) result[codes[row]] = values[row];
  return result;
}

function firstOf(values: Float64Array, { codes, count }: Groups): Float64Array {
  const result = new Float64Array(count).fill(Number.NaN);
  for (let row = 0; row < values.length; row++) if (Number.isNaN(result[codes[row]])) result[codes[row]] = values[row];
  return result;
}

function firstWord({ codes, levels }: TextColumn, groups: Groups): TextColumn {
  const result = new Int32Array(groups.count).fill(-1);
  for (let row = 0; row < codes.length; row++)
    if (result[groups.codes[row]] < 0) result[groups.codes[row]] = codes[row];
  return new TextColumn(result, levels);
}

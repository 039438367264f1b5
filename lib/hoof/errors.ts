import type { Columns } from '../sheet/column.ts';
import type { Groups } from '../sheet/table.ts';
import { measured } from './measured.ts';

/** With fewer degrees of freedom the herd's own repeats say too little about their error. */
export const enoughRepeats = 10;

/** By what a poor view, or hair over the hairline, enlarges the error. Common practice, no source. */
export const poorViewFactor = 2;

/** How large the error of one reading of a column is, and how that is known. */
export interface ColumnError {
  readonly name: string;
  readonly unit: string;
  /** One standard error of one reading in a good view, in `unit`; `NaN` where unknown. */
  readonly value: number;
  /** `given`: the table brought its own. `repeats`: from this herd's readings of one foot at one moment. */
  readonly from: 'given' | 'repeats' | 'table' | 'unknown';
  /** Where from the table: a key of the bibliography, or the words for what has none. */
  readonly source?: string;
  /** Where from repeats: how much they are worth, the readings less the feet they are of. */
  readonly degrees: number;
}

/** The errors of the table of measured columns, whatever a herd's own repeats say. */
export const usualErrors: readonly ColumnError[] = measured.flatMap(({ name, unit, error }) =>
  error === undefined ? [] : [{ name, unit, ...error, from: 'table', degrees: 0 }],
);

/**
 * The standard error of one reading of each measured column of a table.
 * @param columns  of one table; measured columns are known by their names
 * @param repeats  rows sorted into readings of one foot at one moment, where the table has such
 * @param poor  1 where a row was seen poorly; such rows say nothing about the error of a good view
 * @returns one entry a measured column present: the within-foot standard deviation of the herd's own repeats where
 *   they have ten degrees of freedom or more, else the value of the table of measured columns, else unknown
 * @source Bland & Altman 1996, BMJ 312:1654, for the within-subject standard deviation
 */
export function columnErrors(columns: Columns, repeats?: Groups, poor?: Float64Array): ColumnError[] {
  const found: ColumnError[] = [];
  for (const { name, unit, error } of measured) {
    const column = Object.hasOwn(columns, name) ? columns[name] : undefined;
    if (column === undefined || !(column.values instanceof Float64Array)) continue;
    const own = repeats === undefined ? { sd: Number.NaN, degrees: 0 } : withinSd(column.values, repeats, poor);
    const { degrees } = own;
    if (column.error !== undefined) found.push({ name, unit, value: Number.NaN, from: 'given', degrees });
    else if (degrees >= enoughRepeats) found.push({ name, unit, value: own.sd, from: 'repeats', degrees });
    else if (error !== undefined)
      found.push({ name, unit, value: error.value, from: 'table', source: error.source, degrees });
    else found.push({ name, unit, value: Number.NaN, from: 'unknown', degrees });
  }
  return found;
}

/**
 * The standard deviation of readings within their groups, all groups pooled.
 * @param leaveOut  1 where a row is not to count
 * @returns in the unit of `values`; `NaN` where no group has two readings. `degrees` is readings less groups.
 * @example withinSd(Float64Array.of(50, 52), { codes: Int32Array.of(0, 0), count: 1 }).sd // 1.4142135623730951
 */
export function withinSd(
  values: Float64Array,
  { codes, count }: Groups,
  leaveOut?: Float64Array,
): { sd: number; degrees: number } {
  const sums = new Float64Array(count);
  const counts = new Int32Array(count);
  const used = (row: number): boolean => !Number.isNaN(values[row]) && leaveOut?.[row] !== 1;
  for (let row = 0; row < values.length; row++) {
    if (!used(row)) continue;
    sums[codes[row]] += values[row];
    counts[codes[row]]++;
  }
  let squares = 0;
  for (let row = 0; row < values.length; row++)
    if (used(row)) squares += (values[row] - sums[codes[row]] / counts[codes[row]]) ** 2;
  let degrees = 0;
  for (const n of counts) if (n > 1) degrees += n - 1;
  // Of single readings, nothing over nothing.
  return { sd: Math.sqrt(squares / degrees), degrees };
}

/** The columns with the error of each reading beside its value; unknown errors stay away, given ones as they are. */
export function withErrors(columns: Columns, errors: readonly ColumnError[], poor?: Float64Array): Columns {
  const all: Columns = Object.assign(Object.create(null), columns);
  for (const { name, value } of errors) {
    if (Number.isNaN(value)) continue;
    const column = columns[name];
    const error = new Float64Array(column.values.length).fill(value);
    if (poor !== undefined)
      for (let row = 0; row < error.length; row++) if (poor[row] === 1) error[row] *= poorViewFactor;
    all[name] = { ...column, error };
  }
  return all;
}

import { group } from 'd3-array';
import { TextColumn } from '../sheet/column.ts';
import type { Table } from '../sheet/table.ts';
import { type Icc, icc, type LimitsOfAgreement, limitsOfAgreement, repeatabilityCoefficient } from '../stats/index.ts';
import { say } from '../words/say.ts';
import { withinSd } from './errors.ts';

/** How well a column repeats, from several readings of one foot at one moment. */
export interface ColumnRepeatability {
  readonly column: string;
  readonly unit: string;
  /** Feet at a moment with two readings or more, and readings of those. */
  readonly feet: number;
  readonly readings: number;
  /** The standard deviation of readings of one foot, in `unit`; `NaN` of none. */
  readonly withinSd: number;
  /** Two readings of one foot differ by less than this 95 times in 100. */
  readonly repeatability: number;
  /** One-way intraclass correlation of one reading, with its limits: 1 where readings tell feet apart without error. */
  readonly icc: Pick<Icc['ICC1'], 'value' | 'lower' | 'upper'>;
  /** Readings whose mean tells the herd's feet apart with a reliability of 0.9; `NaN` where no number would. */
  readonly worthwhile: number;
}

/** Readings of the same feet by two people, or the first and the second reading where people are not told apart. */
export interface PairAgreement extends LimitsOfAgreement {
  readonly column: string;
  readonly unit: string;
  readonly first: string;
  readonly second: string;
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/** The reliability that repeats should reach: common practice, no source. */
const wanted = 0.9;

/**
 * How well the herd's own readings repeat, column by column.
 * @param feet  every reading, with `horse_id`, `date`, `limb`, `moment` and the columns; readings of a foot at a moment
 *   are repeats of each other
 * @param columns  names of number columns; those without a single repeat are left out
 * @source Bland & Altman 1996, BMJ 312:1654; Shrout & Fleiss 1979, Psychological Bulletin 86:420–428; how many readings by
 *   the formula of Spearman and Brown (1910), solved for their number
 */
export function repeatabilities(feet: Table, columns: readonly string[]): ColumnRepeatability[] {
  const groups = readingGroups(feet);
  return columns.flatMap((name) => {
    const column = feet.column(name);
    if (column instanceof TextColumn) return [];
    const { sd } = withinSd(column.values, groups);
    const pairs = Array.from(rowsOf(groups, column.values).values()).filter((rows) => rows.length > 1);
    if (pairs.length === 0) return [];
    const { ICC1 } = icc(pairs.map(([a, b]) => [column.values[a], column.values[b]]));
    return {
      column: name,
      unit: column.unit,
      feet: pairs.length,
      readings: pairs.reduce((sum, rows) => sum + rows.length, 0),
      withinSd: sd,
      repeatability: repeatabilityCoefficient(sd),
      icc: { value: ICC1.value, lower: ICC1.lower, upper: ICC1.upper },
      worthwhile: readingsFor(ICC1.value),
    };
  });
}

/** How many readings' mean reaches the reliability that is wanted, at least one. */
function readingsFor(one: number): number {
  if (!(one > 0)) return Number.NaN;
  return Math.max(1, Math.ceil((wanted * (1 - one)) / (one * (1 - wanted)) - 1e-9));
}

/**
 * What is the smallest change between two days that is more than error, where each is a mean of some readings?
 * @param readings  of each day
 * @returns in the unit of `sd`: passed by chance 5 times in 100
 * @example smallestChange(1, 1) // 2.77…
 */
export function smallestChange(sd: number, readings: number): number {
  return repeatabilityCoefficient(sd) / Math.sqrt(readings);
}

/**
 * How two people agree on a column: the two with the most feet in common, each one's readings of a foot averaged. Where no
 * observer is named, the first reading against the second.
 * @returns `undefined` where no foot has two readings
 * @source Bland & Altman 1999, Statistical Methods in Medical Research 8:135–160
 */
export function observerAgreement(feet: Table, column: string): PairAgreement | undefined {
  const { values, unit } = feet.column(column) as { values: Float64Array; unit: string };
  const rows = rowsOf(readingGroups(feet), values);
  const observer = feet.names.includes('observer') ? (feet.column('observer') as TextColumn) : undefined;
  const pair = observer === undefined ? undefined : commonestPair([...rows.values()], observer);
  const [a, b]: number[][] = [[], []];
  for (const own of rows.values()) {
    const of = (name: string) => meanOf(own.filter((row) => observer?.at(row) === name).map((row) => values[row]));
    const [one, two] = pair === undefined ? [values[own[0]], values[own[1]]] : [of(pair[0]), of(pair[1])];
    // Where there is no second reading, the sum is no number either.
    if (Number.isNaN(one + two)) continue;
    a.push(one);
    b.push(two);
  }
  if (a.length === 0) return undefined;
  const [first, second] = pair ?? [say`first reading`, say`second reading`];
  const columns = { a: Float64Array.from(a), b: Float64Array.from(b) };
  return { column, unit, first, second, ...columns, ...limitsOfAgreement(columns.a, columns.b) };
}

function readingGroups(feet: Table) {
  return feet.groups(['horse_id', 'date', 'limb', 'moment'].filter((name) => feet.names.includes(name)));
}

/** The rows of each group that have a value, in order. */
function rowsOf({ codes }: { codes: Int32Array }, values: Float64Array): Map<number, number[]> {
  const measured = [...values.keys()].filter((row) => !Number.isNaN(values[row]));
  return group(measured, (row) => codes[row]);
}

function commonestPair(groups: readonly number[][], observer: TextColumn): [string, string] | undefined {
  const counts = new Map<string, { pair: [string, string]; count: number }>();
  for (const rows of groups) {
    const names = [...new Set(rows.map((row) => observer.at(row)))].filter((name) => name !== '').sort();
    for (const [i, one] of names.entries())
      for (const two of names.slice(i + 1)) {
        const key = JSON.stringify([one, two]);
        counts.set(key, { pair: [one, two], count: (counts.get(key)?.count ?? 0) + 1 });
      }
  }
  return [...counts.values()].sort((a, b) => b.count - a.count)[0]?.pair;
}

function meanOf(values: readonly number[]): number {
  return values.length === 0 ? Number.NaN : values.reduce((sum, value) => sum + value, 0) / values.length;
}

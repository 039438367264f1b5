import { type NumberColumn, TextColumn } from '../sheet/column.ts';
import { dayMs } from '../sheet/days.ts';
import type { Table } from '../sheet/table.ts';
import { type Herd, intervalSheet } from './herd.ts';
import { comparisons } from './intervals.ts';
import { limbs as everyLimb, type Limb } from './limbs.ts';
import { partName } from './partName.ts';

/** What is asked of the herd's intervals. */
export interface IntervalQuestion {
  /** A column of the feet with numbers, measured or computed: `wall_level_mm`. */
  readonly outcome: string;
  /** Whether only the size of the value counts, not its sign: does the foot go out of level, to whichever side? */
  readonly size?: boolean;
  /** Which feet; all four where left out. */
  readonly limbs?: readonly Limb[];
}

/** The herd's intervals as the rows of a model: plain arrays, one entry an interval of one foot, none of them missing a change. */
export interface IntervalData {
  readonly outcome: string;
  readonly unit: string;
  readonly size: boolean;
  readonly horse: readonly string[];
  readonly limb: readonly string[];
  /** Days since 1970-01-01. */
  readonly start: Float64Array;
  readonly end: Float64Array;
  /** From start to end, of the value or of its size, in `unit`, with one standard error (`NaN` where unknown). */
  readonly change: Float64Array;
  readonly changeError: Float64Array;
  /** The value at the start, or its size. */
  readonly atStart: Float64Array;
  /** `shod`, `bare` or `''` where unknown. */
  readonly shod: readonly string[];
  /** Who worked at the start; `''` where unknown. */
  readonly farrier: readonly string[];
  /** The quarter of the year in which the middle of the interval lies. */
  readonly season: readonly string[];
  /** Which moments are compared, in words. */
  readonly compared: string;
  readonly leftOut: {
    /** One end or both not measured, or of no known horse or days. */
    readonly unmeasured: number;
    /** Set so by vet and farrier on purpose. */
    readonly therapeutic: number;
    /** Measured at moments other than the ones compared. */
    readonly otherMoments: number;
  };
}

/** Rows of an intervals table that can enter a model, whichever moments they compare. */
export type IntervalRows = Omit<IntervalData, 'compared' | 'leftOut'> & {
  readonly compared: readonly string[];
  readonly leftOut: Omit<IntervalData['leftOut'], 'otherMoments'>;
};

/** With this many intervals from after the work to before the next, no others are needed. */
export const enoughIntervals = 20;

/**
 * The herd's intervals turned into the rows of a model. Where there are twenty from after the work to before the next, only
 * those count: nothing but the time between lies in them. Else the most frequent like moments are compared.
 * @param question  which outcome, signed or as a size, and of which feet
 * @returns rows in the order of the intervals; therapeutic feet and what can't be compared are left out and counted
 * @throws TypeError where the outcome is no column of numbers of the feet
 */
export function intervalData(
  herd: Pick<Herd, 'occasions' | 'visits' | 'visitIndex'>,
  question: IntervalQuestion,
): IntervalData {
  const { outcome } = question;
  const { occasions } = herd;
  if (!occasions.names.includes(outcome) || occasions.column(outcome).kind !== 'number')
    throw new TypeError(`${outcome} is no column of numbers of the feet`);
  const all = intervalRows(intervalSheet(herd, [outcome]), question);
  const counts = new Map<string, number>();
  for (const words of all.compared) counts.set(words, (counts.get(words) ?? 0) + 1);
  const compared = chooseMoments(counts);
  const rows = [...all.compared.keys()].filter((row) => all.compared[row] === compared);
  const otherMoments = all.compared.length - rows.length;
  return { ...takenRows(all, rows), compared, leftOut: { ...all.leftOut, otherMoments } };
}

/**
 * The rows of an intervals table that can enter a model: measured at both ends, and not set so on purpose by vet and farrier.
 * @param table  as `intervalSheet` gives it, or as it was written and read again: `horse_id`, `limb`, `start_date`, `end_date`,
 *   `compared`, the outcome at start and end; `shod`, `farrier` and `therapeutic` where they are known
 * @throws TypeError where a column is missing or of another kind
 */
export function intervalRows(table: Table, question: IntervalQuestion): IntervalRows {
  const { outcome, size = false, limbs = everyLimb } = question;
  const text = (name: string) => textOf(table, name).values;
  const numbers = (name: string) => numbersOf(table, name).values;
  const has = (name: string) => table.names.includes(name);
  const [from, to] = ['start', 'end'].map((part) => numbersOf(table, partName(outcome, part)));
  const sized = (value: number) => (size ? Math.abs(value) : value);
  const starts = from.values.map(sized);
  const changes = to.values.map((value, row) => sized(value) - starts[row]);
  const onPurpose = has('therapeutic') ? numbers('therapeutic') : undefined;
  const limb = text('limb');
  const horse = text('horse_id');
  const days = { start: numbers('start_date'), end: numbers('end_date') };
  const leftOut = { unmeasured: 0, therapeutic: 0 };
  const rows: number[] = [];
  for (let row = 0; row < table.rows; row++) {
    if (!limbs.includes(limb[row] as Limb)) continue;
    if (onPurpose?.[row] === 1) leftOut.therapeutic++;
    else if (Number.isNaN(changes[row] + days.start[row] + days.end[row]) || horse[row] === '') leftOut.unmeasured++;
    else rows.push(row);
  }
  const picked = (values: Float64Array) => numbersAt(values, rows);
  const words = (name: string) => {
    const values = text(name);
    return rows.map((row) => values[row]);
  };
  const start = picked(days.start);
  const end = picked(days.end);
  return {
    ...{ outcome, unit: from.unit, size, start, end, leftOut },
    compared: words('compared'),
    horse: words('horse_id'),
    limb: words('limb'),
    change: picked(changes),
    // Both ends were measured by themselves.
    changeError: Float64Array.from(rows, (row) =>
      Math.hypot(from.error?.[row] ?? Number.NaN, to.error?.[row] ?? Number.NaN),
    ),
    atStart: picked(starts),
    shod: has('shod') ? Array.from(picked(numbers('shod')), shoeing) : rows.map(() => ''),
    farrier: has('farrier') ? words('farrier') : rows.map(() => ''),
    season: Array.from(start, (day, i) => quarterOf((day + end[i]) / 2)),
  };
}

function shoeing(shod: number): string {
  return shod === 1 ? 'shod' : shod === 0 ? 'bare' : '';
}

function textOf(table: Table, name: string): TextColumn {
  const column = table.column(name);
  if (!(column instanceof TextColumn)) throw new TypeError(`${name} must hold text, and it holds ${column.kind}s`);
  return column;
}

function numbersOf(table: Table, name: string): NumberColumn {
  const column = table.column(name);
  if (!(column instanceof TextColumn)) return column;
  if (column.levels.length > 0) throw new TypeError(`${name} must hold numbers or days, and it holds text`);
  // A file that never names it can't say what it would be.
  return { kind: 'number', unit: '1', values: new Float64Array(table.rows).fill(Number.NaN) };
}

/** By hand, as tables of a registry are long and `from` is slow. */
export function numbersAt(values: Float64Array, rows: readonly number[]): Float64Array {
  const some = new Float64Array(rows.length);
  for (let i = 0; i < some.length; i++) some[i] = values[rows[i]];
  return some;
}

/** Some of the rows. */
function takenRows(all: IntervalRows, rows: readonly number[]): IntervalRows {
  const words = (values: readonly string[]) => rows.map((row) => values[row]);
  const numbers = (values: Float64Array) => numbersAt(values, rows);
  return {
    ...all,
    ...{ horse: words(all.horse), limb: words(all.limb), compared: words(all.compared), shod: words(all.shod) },
    ...{ farrier: words(all.farrier), season: words(all.season), start: numbers(all.start), end: numbers(all.end) },
    ...{ change: numbers(all.change), changeError: numbers(all.changeError), atStart: numbers(all.atStart) },
  };
}

/** Which moments are compared, by how many intervals there are of each. */
export function chooseMoments(counts: ReadonlyMap<string, number>): string {
  const count = (words: string) => counts.get(words) ?? 0;
  const [undisturbed, ...others] = comparisons;
  if (count(undisturbed) >= enoughIntervals) return undisturbed;
  return others.reduce<string>((best, each) => (count(each) > count(best) ? each : best), undisturbed);
}

const quarters = ['Jan–Mar', 'Apr–Jun', 'Jul–Sep', 'Oct–Dec'] as const;

/** A quarter of the year and not a season's name: south of the equator summer is in January. */
function quarterOf(day: number): string {
  return quarters[Math.floor(new Date(day * dayMs).getUTCMonth() / 3)];
}

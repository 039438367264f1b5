import { TextColumn } from '../sheet/column.ts';
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
    /** One end or both not measured. */
    readonly unmeasured: number;
    /** Set so by vet and farrier on purpose. */
    readonly therapeutic: number;
    /** Measured at moments other than the ones compared. */
    readonly otherMoments: number;
  };
}

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
  const { outcome, size = false, limbs = everyLimb } = question;
  const { occasions } = herd;
  if (!occasions.names.includes(outcome) || occasions.column(outcome).kind !== 'number')
    throw new TypeError(`${outcome} is no column of numbers of the feet`);
  const table = intervalSheet(herd, [outcome]);
  const text = (name: string) => table.column(name).values as readonly string[];
  const numbers = (name: string) => table.column(name).values as Float64Array;
  const [from, to] = ['start', 'end'].map((part) => table.column(partName(outcome, part)));
  const sized = (value: number) => (size ? Math.abs(value) : value);
  const starts = (from.values as Float64Array).map(sized);
  const changes = (to.values as Float64Array).map((value, row) => sized(value) - starts[row]);
  const errors = errorsOf(table, partName(outcome, 'change'));

  const compared = text('compared');
  const onPurpose = numbers('therapeutic');
  const limb = text('limb');
  const leftOut = { unmeasured: 0, therapeutic: 0, otherMoments: 0 };
  const usable: number[] = [];
  for (let row = 0; row < table.rows; row++) {
    if (!limbs.includes(limb[row] as Limb)) continue;
    if (onPurpose[row] === 1) leftOut.therapeutic++;
    else if (Number.isNaN(changes[row])) leftOut.unmeasured++;
    else usable.push(row);
  }
  const chosen = chooseMoments(usable.map((row) => compared[row]));
  const rows = usable.filter((row) => compared[row] === chosen);
  leftOut.otherMoments = usable.length - rows.length;
  const picked = (values: Float64Array) => Float64Array.from(rows, (row) => values[row]);
  const words = (name: string) => {
    const values = text(name);
    return rows.map((row) => values[row]);
  };
  const start = picked(numbers('start_date'));
  const end = picked(numbers('end_date'));
  return {
    ...{ outcome, unit: from.unit, size, start, end, compared: chosen, leftOut },
    horse: words('horse_id'),
    limb: words('limb'),
    change: picked(changes),
    changeError: Float64Array.from(rows, (row) => errors?.[row] ?? Number.NaN),
    atStart: picked(starts),
    shod: table.names.includes('shod') ? Array.from(picked(numbers('shod')), shoeing) : rows.map(() => ''),
    farrier: words('farrier'),
    season: Array.from(start, (day, i) => quarterOf((day + end[i]) / 2)),
  };
}

function shoeing(shod: number): string {
  return shod === 1 ? 'shod' : shod === 0 ? 'bare' : '';
}

function errorsOf(table: Table, name: string): Float64Array | undefined {
  const column = table.column(name);
  return column instanceof TextColumn ? undefined : column.error;
}

function chooseMoments(compared: readonly string[]): string {
  const count = (words: string) => compared.filter((each) => each === words).length;
  const [undisturbed, ...others] = comparisons;
  if (count(undisturbed) >= enoughIntervals) return undisturbed;
  return others.reduce<string>((best, each) => (count(each) > count(best) ? each : best), undisturbed);
}

const quarters = ['Jan–Mar', 'Apr–Jun', 'Jul–Sep', 'Oct–Dec'] as const;

/** A quarter of the year and not a season's name: south of the equator summer is in January. */
function quarterOf(day: number): string {
  return quarters[Math.floor(new Date(day * 86_400_000).getUTCMonth() / 3)];
}

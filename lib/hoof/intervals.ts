import { type Columns, TextColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import type { Table } from '../sheet/table.ts';
import { limbs } from './limbs.ts';
import { partName } from './partName.ts';
import type { VisitIndex } from './visitIndex.ts';

/** Which rows of the occasions an interval compares, in words; `''` where its ends have no like moments. */
export const comparisons = ['after to before', 'before to before', 'after to after', 'between to between'] as const;

/** Columns of the occasions whose start and end stand in the intervals unless others are asked for. */
export const intervalOutcomes: readonly string[] = [
  'toe_length_mm',
  'toe_angle_deg',
  'heel_angle_deg',
  'toe_minus_heel_deg',
  'wall_level_mm',
  'heel_level_mm',
];

/**
 * Each foot's gaps between one visit's work and the next, one row a gap that was measured at one end at least.
 * Work days are those of the visits, and the days with a measurement before or after the work; where a foot has
 * neither, every day on which it was measured.
 * @param occasions  one row a foot, day and moment, these three known: `horse_id`, `date`, `limb`, `moment`, the outcomes
 *   and, where there, `shod`
 * @param visits  the visits of each foot, by the horse codes of the occasions
 * @param outcomes  columns of the occasions to set side by side; those it lacks are left out
 * @returns `horse_id`, `limb`, `start_date`, `end_date`, `days`, `compared` (from `after` at the start to `before` at
 *   the end where both were measured, else from like moments), `shod`, then start and end of each outcome with their
 *   errors, and in `startVisits` the row of the visit at the start, or -1. Where nothing can be compared, values are missing.
 */
export function intervalColumns(
  occasions: Table,
  visits: VisitIndex,
  outcomes: readonly string[] = intervalOutcomes,
): { columns: Columns; startVisits: Int32Array } {
  const gaps = findGaps(occasions, visits);
  const rowsOf = (of: (gap: Gap) => number) => filled(new Int32Array(gaps.length), gaps, of);
  const numbersOf = (of: (gap: Gap) => number) => filled(new Float64Array(gaps.length), gaps, of);
  const [starts, ends, either] = [rowsOf(({ start }) => start), rowsOf(({ end }) => end), rowsOf(({ row }) => row)];
  const columns: Columns = Object.create(null);
  columns.horse_id = gather(occasions.column('horse_id'), either);
  columns.limb = gather(occasions.column('limb'), either);
  columns.start_date = { kind: 'date', values: numbersOf(({ from }) => from) };
  columns.end_date = { kind: 'date', values: numbersOf(({ to }) => to) };
  // Days are counted, not measured: their error is none, which is not the same as unknown.
  columns.days = {
    unit: 'd',
    values: numbersOf(({ from, to }) => to - from),
    error: new Float64Array(gaps.length),
  };
  columns.compared = new TextColumn(
    rowsOf(({ compared }) => compared),
    comparisons,
  );
  if (occasions.names.includes('shod')) columns.shod = gather(occasions.column('shod'), either);
  for (const outcome of outcomes) {
    if (!occasions.names.includes(outcome)) continue;
    columns[partName(outcome, 'start')] = gather(occasions.column(outcome), starts);
    columns[partName(outcome, 'end')] = gather(occasions.column(outcome), ends);
  }
  return { columns, startVisits: rowsOf(({ visit }) => visit) };
}

/** By hand, as a registry has many and `from` is slow. */
function filled<A extends Int32Array | Float64Array>(numbers: A, gaps: readonly Gap[], of: (gap: Gap) => number): A {
  for (let i = 0; i < numbers.length; i++) numbers[i] = of(gaps[i]);
  return numbers;
}

interface Gap {
  /** Days. */
  readonly from: number;
  readonly to: number;
  /** Rows of the occasions that are compared, -1 where none; and one that was measured at either end. */
  readonly start: number;
  readonly end: number;
  readonly row: number;
  /** A place in `comparisons`, or -1. */
  readonly compared: number;
  /** The visit at the start, or -1. */
  readonly visit: number;
}

/** What was measured of a foot on one day: rows of the occasions, or -1. */
interface Day {
  readonly date: number;
  before: number;
  after: number;
  between: number;
}

function findGaps(occasions: Table, visits: VisitIndex): Gap[] {
  return rowsByFoot(occasions).flatMap((rows, foot) => {
    const ends = workEnds(daysOf(rows, occasions), visits.workDays(foot));
    const gaps: Gap[] = [];
    for (let i = 1; i < ends.length; i++) {
      const [a, b] = [ends[i - 1], ends[i]];
      const row = Math.max(a.after, a.between, a.before, b.before, b.between, b.after);
      if (row >= 0) gaps.push({ from: a.date, to: b.date, row, visit: visits.on(foot, a.date), ...compare(a, b) });
    }
    return gaps;
  });
}

function compare(a: Day, b: Day): Pick<Gap, 'start' | 'end' | 'compared'> {
  const pairs = [
    [a.after, b.before],
    [a.before, b.before],
    [a.after, b.after],
    [a.between, b.between],
  ];
  const compared = pairs.findIndex(([start, end]) => start >= 0 && end >= 0);
  const [start, end] = compared < 0 ? [-1, -1] : pairs[compared];
  return { start, end, compared };
}

/** The days that bound a foot's intervals: known work, and measurements that say they were before or after it. */
function workEnds(days: readonly Day[], workDays: readonly number[]): readonly Day[] {
  const bound = days.filter(({ before, after }) => before >= 0 || after >= 0);
  if (bound.length === 0 && workDays.length === 0) return days;
  const byDate = new Map<number, Day>();
  for (const date of workDays) byDate.set(date, { date, before: -1, after: -1, between: -1 });
  for (const day of days) if (bound.includes(day) || byDate.has(day.date)) byDate.set(day.date, day);
  return [...byDate.values()].sort((a, b) => a.date - b.date);
}

/** What was measured of a foot, as days in order. */
function daysOf(rows: readonly number[], occasions: Table): readonly Day[] {
  const dates = occasions.column('date').values as Float64Array;
  const moment = occasions.column('moment') as TextColumn;
  const days = new Map<number, Day>();
  for (const row of rows) {
    const day = days.get(dates[row]) ?? { date: dates[row], before: -1, after: -1, between: -1 };
    day[moment.at(row) as 'before' | 'after' | 'between'] = row;
    days.set(day.date, day);
  }
  return [...days.values()].sort((a, b) => a.date - b.date);
}

/** The rows of each foot; a foot is `4 * horse code + place in limbs`. */
function rowsByFoot(occasions: Table): number[][] {
  const horse = occasions.column('horse_id') as TextColumn;
  const limb = occasions.column('limb') as TextColumn;
  const places = limb.levels.map((code) => (limbs as readonly string[]).indexOf(code));
  const rows: number[][] = Array.from({ length: 4 * horse.levels.length }, () => []);
  for (let row = 0; row < occasions.rows; row++) rows[4 * horse.codes[row] + places[limb.codes[row]]].push(row);
  return rows;
}

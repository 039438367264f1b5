import { type Columns, TextColumn } from '../sheet/column.ts';
import type { Table } from '../sheet/table.ts';
import { gather } from './gather.ts';
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
 * @param occasions  one row a foot, day and moment: `horse_id`, `date`, `limb`, `moment`, `shod` and the outcomes
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
  const starts = Int32Array.from(gaps, ({ start }) => start);
  const ends = Int32Array.from(gaps, ({ end }) => end);
  const either = Int32Array.from(gaps, ({ row }) => row);
  const columns: Columns = Object.create(null);
  columns.horse_id = gather(occasions.column('horse_id'), either);
  columns.limb = gather(occasions.column('limb'), either);
  columns.start_date = { kind: 'date', values: Float64Array.from(gaps, ({ from }) => from) };
  columns.end_date = { kind: 'date', values: Float64Array.from(gaps, ({ to }) => to) };
  // Days are counted, not measured: their error is none, which is not the same as unknown.
  columns.days = {
    unit: 'd',
    values: Float64Array.from(gaps, ({ from, to }) => to - from),
    error: new Float64Array(gaps.length),
  };
  columns.compared = new TextColumn(
    Int32Array.from(gaps, ({ compared }) => compared),
    comparisons,
  );
  if (occasions.names.includes('shod')) columns.shod = gather(occasions.column('shod'), either);
  for (const outcome of outcomes) {
    if (!occasions.names.includes(outcome)) continue;
    columns[partName(outcome, 'start')] = gather(occasions.column(outcome), starts);
    columns[partName(outcome, 'end')] = gather(occasions.column(outcome), ends);
  }
  return { columns, startVisits: Int32Array.from(gaps, ({ visit }) => visit) };
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
  const { starts, order, dates, momentOf } = byFoot(occasions);
  const gaps: Gap[] = [];
  for (let foot = 0; foot + 1 < starts.length; foot++) {
    if (starts[foot] === starts[foot + 1]) continue;
    const days = daysOf(order.subarray(starts[foot], starts[foot + 1]), dates, momentOf);
    const ends = workEnds(days, visits.workDays(foot));
    for (let i = 1; i < ends.length; i++) {
      const [a, b] = [ends[i - 1], ends[i]];
      const row = Math.max(a.after, a.between, a.before, b.before, b.between, b.after);
      if (row < 0) continue;
      gaps.push({ from: a.date, to: b.date, row, visit: visits.on(foot, a.date), ...compare(a, b) });
    }
  }
  return gaps;
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

/** A foot's rows, sorted by date, as days. */
function daysOf(
  rows: Int32Array,
  dates: Float64Array,
  momentOf: (row: number) => 'before' | 'after' | 'between',
): readonly Day[] {
  const days: Day[] = [];
  for (const row of rows) {
    let day = days.at(-1);
    if (day?.date !== dates[row]) {
      day = { date: dates[row], before: -1, after: -1, between: -1 };
      days.push(day);
    }
    day[momentOf(row)] = row;
  }
  return days;
}

/** Rows foot by foot, each foot's in order of date; a foot is `4 * horse code + place in limbs`. */
function byFoot(occasions: Table) {
  const horse = occasions.column('horse_id') as TextColumn;
  const limb = occasions.column('limb') as TextColumn;
  const dates = occasions.column('date').values as Float64Array;
  const moment = occasions.names.includes('moment') ? (occasions.column('moment') as TextColumn) : undefined;
  const places = limb.levels.map((code) => (limbs as readonly string[]).indexOf(code));
  const footOf = (row: number): number =>
    horse.codes[row] < 0 || limb.codes[row] < 0 || Number.isNaN(dates[row])
      ? -1
      : 4 * horse.codes[row] + places[limb.codes[row]];
  const starts = new Int32Array(4 * horse.levels.length + 1);
  for (let row = 0; row < dates.length; row++) if (footOf(row) >= 0) starts[footOf(row) + 1]++;
  for (let foot = 1; foot < starts.length; foot++) starts[foot] += starts[foot - 1];
  const next = starts.slice();
  const order = new Int32Array(starts[starts.length - 1]);
  for (let row = 0; row < dates.length; row++) if (footOf(row) >= 0) order[next[footOf(row)]++] = row;
  for (let foot = 0; foot + 1 < starts.length; foot++)
    order.subarray(starts[foot], starts[foot + 1]).sort((a, b) => dates[a] - dates[b]);
  const momentOf = (row: number): 'before' | 'after' | 'between' => {
    const word = moment === undefined ? '' : moment.at(row);
    return word === 'before' || word === 'after' ? word : 'between';
  };
  return { starts, order, dates, momentOf };
}

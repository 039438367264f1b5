import type { NumberColumn, TextColumn } from '../sheet/column.ts';
import type { Table } from '../sheet/table.ts';
import { partName } from './partName.ts';

/** How fast each foot of a herd changes from one visit's work to the next: what a due list is made from. */
export interface DueData {
  /** The name it has in the feet, and its UCUM unit. */
  readonly outcome: string;
  readonly unit: string;
  /** One entry an interval between work and work, none missing: the foot, its length, and the change in the outcome's unit. */
  readonly horse: readonly string[];
  readonly limb: readonly string[];
  readonly days: Float64Array;
  readonly change: Float64Array;
  /** For each horse of the herd the day of the last work, `NaN` where none is known. */
  readonly lastWork: ReadonlyMap<string, number>;
}

/**
 * The changes from work to work that a due list is made from: only those that no farrier's work lies between.
 * @param herd  its intervals, with the start and end of the outcome, and its visits
 */
export function dueData(
  { intervals, visits }: { readonly intervals: Table; readonly visits: Table },
  outcome: string,
): DueData {
  const text = (table: Table, name: string) => table.column(name) as TextColumn;
  const numbers = (name: string) => intervals.column(name).values as Float64Array;
  const [horse, limb, compared] = ['horse_id', 'limb', 'compared'].map((name) => text(intervals, name));
  const days = numbers('days');
  const [start, end] = ['start', 'end'].map((part) => numbers(partName(outcome, part)));
  const rows = Array.from(days.keys()).filter(
    (row) => compared.at(row) === 'after to before' && days[row] > 0 && !Number.isNaN(end[row] - start[row]),
  );
  const lastWork = new Map<string, number>();
  const later = (name: string, day: number) => {
    if (name !== '' && !(day <= (lastWork.get(name) ?? Number.NEGATIVE_INFINITY))) lastWork.set(name, day);
  };
  const work = visits.names.includes('work') ? text(visits, 'work') : undefined;
  const dates = visits.column('date').values as Float64Array;
  const visited = text(visits, 'horse_id');
  for (let row = 0; row < visits.rows; row++)
    if (work?.at(row) !== 'none' && !Number.isNaN(dates[row])) later(visited.at(row), dates[row]);
  for (const name of horse.levels) if (!lastWork.has(name)) lastWork.set(name, Number.NaN);
  return {
    outcome,
    unit: (intervals.column(partName(outcome, 'start')) as NumberColumn).unit,
    horse: rows.map((row) => horse.at(row)),
    limb: rows.map((row) => limb.at(row)),
    days: Float64Array.from(rows, (row) => days[row]),
    change: Float64Array.from(rows, (row) => end[row] - start[row]),
    lastWork,
  };
}

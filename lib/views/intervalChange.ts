import { isLimb, type Limb } from '../hoof/limbs.ts';
import { partName } from '../hoof/partName.ts';
import { columnTitle } from './chart.ts';
import { numbersOf, textOf } from './footMeans.ts';
import type { Readable } from './footShape.ts';

/** One foot from one visit's work to the next. */
export interface IntervalChange {
  readonly horse: string;
  readonly limb: Limb;
  /** Days since 1970-01-01. */
  readonly from: number;
  readonly to: number;
  /** In the column's unit. */
  readonly start: number;
  readonly end: number;
  /** In the column's unit a week. */
  readonly slope: number;
  /** From after the work to before the next: what happened between visits and nothing else. */
  readonly undisturbed: boolean;
  /** Which moments are compared, in words. */
  readonly compared: string;
}

/**
 * What a column did in each interval.
 * @param intervals  as the herd makes them: `horse_id`, `limb`, `start_date`, `end_date` and the column's start and end
 * @param column     the name it has in the feet: `toe_length_mm`
 * @param rows       which intervals count; all where left out
 * @returns the intervals that have both ends, in order of the table; `missing` counts the others. Where the table
 *   doesn't say which moments are compared, an interval counts as undisturbed.
 */
export function intervalChanges(
  intervals: Readable,
  column: string,
  rows?: Iterable<number>,
): { changes: IntervalChange[]; missing: number; unit: string; title: string } {
  const horse = textOf(intervals, 'horse_id');
  const limb = textOf(intervals, 'limb');
  const [from, to] = ['start_date', 'end_date'].map((name) => numbersOf(intervals, name).values);
  const [start, end] = ['start', 'end'].map((part) => numbersOf(intervals, partName(column, part)));
  const compared = intervals.names.includes('compared') ? textOf(intervals, 'compared') : undefined;
  const changes: IntervalChange[] = [];
  let missing = 0;
  for (const row of rows ?? Array(intervals.rows).keys()) {
    const code = limb.at(row);
    const slope = ((end.values[row] - start.values[row]) / (to[row] - from[row])) * 7;
    const moments = compared?.at(row) ?? 'after to before';
    if (!isLimb(code) || !Number.isFinite(slope)) missing++;
    else
      changes.push({
        horse: horse.at(row),
        limb: code,
        from: from[row],
        to: to[row],
        start: start.values[row],
        end: end.values[row],
        slope,
        undisturbed: moments === 'after to before',
        compared: moments,
      });
  }
  const title = columnTitle(column);
  return { changes, missing, unit: start.unit, title };
}

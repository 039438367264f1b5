import type { NumberColumn } from '../sheet/column.ts';
import type { Table } from '../sheet/table.ts';
import { type FootFacts, footFacts } from './footFacts.ts';
import { latestOccasions } from './latest.ts';
import { sideOf } from './limbs.ts';
import type { Measure } from './measure.ts';
import { measures } from './measures/index.ts';
import { errorsBeyond } from './verdict.ts';

/** How one computed column of one foot differs from the last time at the same moment, in the measure's unit. */
export interface FootChange {
  readonly foot: FootFacts;
  readonly measure: Measure;
  readonly before: number;
  readonly now: number;
  /** The day of the earlier one. */
  readonly since: number;
  readonly change: number;
  /** One standard error of the change. */
  readonly error: number;
}

export interface Changes {
  /** Changes by more than their error of measuring, the surest first. */
  readonly changed: readonly FootChange[];
  /** How many could be compared, how many of them have no known error, and how many feet were measured only once. */
  readonly compared: number;
  readonly withoutError: number;
  readonly once: number;
}

/**
 * What of one horse has changed by more than the error of measuring since the last time at the same moment: before the
 * work against before, after against after.
 * @param occasions  one row a foot, day and moment, with the computed columns
 * @returns changes larger than 1.96 standard errors; what a pair of feet shares is listed once
 */
export function changesSince(occasions: Table, horse: string): Changes {
  const facts = footFacts(occasions);
  const names = occasions.column('horse_id').values;
  const date = occasions.column('date').values as Float64Array;
  const { codes } = occasions.groups(['horse_id', 'limb', 'moment']);
  const feet = latestOccasions(occasions)
    .filter((row) => names[row] === horse)
    .map((row) => ({ row, foot: facts(row), earlier: earlierRow(row, codes, date) }));
  const changed: FootChange[] = [];
  let [compared, withoutError] = [0, 0];
  for (const measure of measures) {
    if (!occasions.names.includes(measure.name)) continue;
    const { values, error: errors } = occasions.column(measure.name) as NumberColumn;
    for (const { row, foot, earlier } of feet) {
      if (earlier < 0 || (measure.view === 'pair' && sideOf(foot.limb) === 'right')) continue;
      const [before, now] = [values[earlier], values[row]];
      if (Number.isNaN(now - before)) continue;
      compared++;
      const error = errors === undefined ? Number.NaN : Math.hypot(errors[earlier], errors[row]);
      if (Number.isNaN(error)) withoutError++;
      const change = now - before;
      if (Math.abs(change) > errorsBeyond * error)
        changed.push({ foot, measure, before, now, since: date[earlier], change, error });
    }
  }
  const sureness = ({ change, error }: FootChange) => Math.abs(change) / error;
  changed.sort((a, b) => sureness(b) - sureness(a));
  return { changed, compared, withoutError, once: feet.filter(({ earlier }) => earlier < 0).length };
}

/** The latest row of the same group before this one, or -1. */
function earlierRow(row: number, codes: Int32Array, date: Float64Array): number {
  let found = -1;
  for (let other = 0; other < codes.length; other++)
    if (codes[other] === codes[row] && date[other] < date[row] && (found < 0 || date[other] > date[found]))
      found = other;
  return found;
}

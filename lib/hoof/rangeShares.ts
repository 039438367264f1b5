import type { NumberColumn } from '../sheet/column.ts';
import type { Table } from '../sheet/table.ts';
import { footFacts } from './footFacts.ts';
import { latestOccasions } from './latest.ts';
import type { Measure, Range } from './measure.ts';
import { measures } from './measures/index.ts';
import { type Ranges, rangeFor } from './ranges.ts';
import { verdict } from './verdict.ts';

/** How many feet of this herd lie outside one range, to stand beside what was published. */
export interface RangeShare {
  readonly measure: Measure;
  readonly range: Range;
  /** Feet for which the range holds and the measure is known. */
  readonly of: number;
  /** Of them outside by the number alone, and outside by more than the error of measuring. */
  readonly outside: number;
  readonly beyond: number;
  /** Feet for which it holds but the measure is missing. */
  readonly missing: number;
}

/**
 * For each range, how many feet of the herd lie outside it now; published shares stand in the range itself.
 * @param occasions  one row a foot, day and moment; each foot counts once, by its latest
 * @returns one entry a range, in the order of the measures
 */
export function rangeShares(occasions: Table, ranges: Ranges): RangeShare[] {
  const facts = footFacts(occasions);
  const feet = latestOccasions(occasions).map((row) => ({ row, foot: facts(row) }));
  const shares: RangeShare[] = [];
  for (const measure of measures) {
    const own = ranges.get(measure.name);
    if (own === undefined || measure.table !== 'feet' || !occasions.names.includes(measure.name)) continue;
    const { values, error } = occasions.column(measure.name) as NumberColumn;
    const counts = new Map(own.map((range) => [range, { of: 0, outside: 0, beyond: 0, missing: 0 }]));
    for (const { row, foot } of feet) {
      const range = rangeFor(own, foot);
      const count = range && counts.get(range);
      if (count === undefined) continue;
      const { state } = verdict(values[row], error?.[row] ?? Number.NaN, range);
      if (state === 'missing') {
        count.missing++;
        continue;
      }
      count.of++;
      if (state !== 'within') count.outside++;
      if (state === 'beyond') count.beyond++;
    }
    for (const [range, count] of counts) shares.push({ measure, range, ...count });
  }
  return shares;
}

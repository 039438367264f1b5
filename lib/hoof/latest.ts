import type { TextColumn } from '../sheet/column.ts';
import type { Table } from '../sheet/table.ts';

const order = ['before', 'between', 'after'];

/**
 * The row of each foot's latest occasion; of several moments on that day, the one after the work.
 * @param occasions  one row a foot, day and moment
 * @returns rows in the order in which feet first appear
 */
export function latestOccasions(occasions: Table): number[] {
  const { codes } = occasions.groups(['horse_id', 'limb']);
  const date = occasions.column('date').values as Float64Array;
  const moment = occasions.column('moment') as TextColumn;
  const places = moment.levels.map((word) => order.indexOf(word));
  const latest: number[] = [];
  for (let row = 0; row < occasions.rows; row++) {
    const known = latest[codes[row]];
    if (
      known === undefined ||
      date[row] > date[known] ||
      (date[row] === date[known] && places[moment.codes[row]] > places[moment.codes[known]])
    )
      latest[codes[row]] = row;
  }
  return latest;
}

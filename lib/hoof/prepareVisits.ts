import { type Columns, rowCount, TextColumn, toColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import { groupRows } from '../sheet/groups.ts';
import { average } from './average.ts';

const names = ['farrier', 'work', 'therapeutic'];

/** Visits with all their columns, empty where nobody wrote them. */
export function prepareVisits(visits: Columns): Columns {
  const rows = rowCount(visits);
  const columns: Columns = Object.create(null);
  columns.horse_id = visits.horse_id;
  columns.date = visits.date;
  const noWords = new TextColumn(new Int32Array(rows).fill(-1), []);
  columns.farrier = Object.hasOwn(visits, 'farrier') ? visits.farrier : noWords;
  columns.work = Object.hasOwn(visits, 'work') ? visits.work : noWords;
  columns.therapeutic = Object.hasOwn(visits, 'therapeutic')
    ? visits.therapeutic
    : { kind: 'boolean', values: new Float64Array(rows).fill(Number.NaN) };
  for (const [name, column] of Object.entries(visits)) if (!Object.hasOwn(columns, name)) columns[name] = column;
  return columns;
}

/**
 * The visits that the feet speak of where there is no visits table: one row a horse and day with a measurement before
 * or after the work, with what the feet say in columns of the same names.
 */
export function visitsFromFeet(feet: Columns): Columns {
  const own: Columns = Object.create(null);
  for (const name of ['horse_id', 'date', ...names]) if (Object.hasOwn(feet, name)) own[name] = feet[name];
  const horse = toColumn(feet.horse_id) as TextColumn;
  const date = feet.date.values as Float64Array;
  const moment = Object.hasOwn(feet, 'moment') ? (toColumn(feet.moment) as TextColumn) : undefined;
  const rows: number[] = [];
  for (let row = 0; row < date.length; row++) {
    const word = moment?.at(row);
    if (horse.codes[row] >= 0 && !Number.isNaN(date[row]) && (word === 'before' || word === 'after')) rows.push(row);
  }
  const kept: Columns = Object.create(null);
  for (const [name, column] of Object.entries(own)) kept[name] = gather(column, rows);
  const { readings, ...visits } = average(kept, groupRows([toColumn(kept.horse_id), toColumn(kept.date)], rows.length));
  return visits;
}

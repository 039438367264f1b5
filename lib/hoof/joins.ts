import { type Columns, rowCount, type TextColumn, toColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import type { Table } from '../sheet/table.ts';
import { limbs } from './limbs.ts';
import type { VisitIndex } from './visitIndex.ts';

const horseColumns = ['build', 'birth_year', 'weight_kg', 'body_weight_kg'];
const visitColumns = ['farrier', 'work'];

/**
 * What is known of each foot's horse: `build`, `birth_year`, `weight_kg`, `body_weight_kg` with its error.
 * @param horses  one row a horse
 */
export function joinHorses(feet: Columns, horses: Table): Columns {
  const rowOf = new Map((horses.column('horse_id') as TextColumn).values.map((name, row) => [name, row]));
  const horse = toColumn(feet.horse_id) as TextColumn;
  const rows = horse.levels.map((name) => rowOf.get(name) ?? -1);
  const rowsOfFeet = horse.codes.map((code) => (code < 0 ? -1 : rows[code]));
  const joined: Columns = Object.create(null);
  for (const name of horseColumns)
    if (horses.names.includes(name)) joined[name] = gather(horses.column(name), rowsOfFeet);
  return joined;
}

/**
 * What is known of each foot's visit: `farrier` and `work` of the visit on that day, else of the last one before it;
 * `therapeutic`, 1 where either of the two says so; `days_since_work`, counted from the work that made the foot what
 * was measured, so for a measurement before the work from the visit before.
 * @param visits  the visits table, and `index` its visits by the horse codes of `feet`
 */
export function joinVisits(feet: Columns, visits: Columns, index: VisitIndex): Columns {
  const rows = rowCount(feet);
  const horse = toColumn(feet.horse_id) as TextColumn;
  const limb = toColumn(feet.limb) as TextColumn;
  const moment = toColumn(feet.moment) as TextColumn;
  const date = feet.date.values as Float64Array;
  const visitDate = visits.date.values as Float64Array;
  const therapeutic = visits.therapeutic.values as Float64Array;
  const places = limb.levels.map((code) => (limbs as readonly string[]).indexOf(code));
  const before = moment.levels.indexOf('before');

  const nearest = new Int32Array(rows);
  const days = new Float64Array(rows).fill(Number.NaN);
  const onPurpose = new Float64Array(rows).fill(Number.NaN);
  for (let row = 0; row < rows; row++) {
    const foot = 4 * horse.codes[row] + places[limb.codes[row]];
    const same = index.on(foot, date[row]);
    const made = index.latestWork(foot, date[row], moment.codes[row] === before);
    nearest[row] = same >= 0 ? same : made;
    if (made >= 0) days[row] = date[row] - visitDate[made];
    for (const visit of [same, made])
      if (therapeutic[visit] >= 0 && onPurpose[row] !== 1) onPurpose[row] = therapeutic[visit];
  }
  const joined: Columns = Object.create(null);
  for (const name of visitColumns) joined[name] = gather(visits[name], nearest);
  joined.therapeutic = { kind: 'boolean', values: onPurpose };
  joined.days_since_work = { unit: 'd', values: days };
  return joined;
}

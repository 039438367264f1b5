import { type Columns, rowCount, toColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import { average } from './average.ts';
import { readingsOfAFoot } from './prepareFeet.ts';

/** What belongs to one reading and means nothing for the mean of several. */
const ofOneReading = ['repeat', 'observer', 'method', 'view_quality', 'hair_over_hairline'];

/**
 * One row a foot, day and moment: repeats averaged, with `readings` saying how many there were.
 * @param feet  prepared feet with their errors
 * @returns the columns that still mean something; rows without horse, date or limb are left out
 */
export function occasionColumns(feet: Columns): Columns {
  const kept: Columns = Object.create(null);
  const keys = ['horse_id', 'date', 'limb'].map((name) => toColumn(feet[name]));
  const rows = rowCount(feet);
  const usable: number[] = [];
  for (let row = 0; row < rows; row++)
    if (keys.every((key) => (key.kind === 'text' ? key.codes[row] >= 0 : !Number.isNaN(key.values[row]))))
      usable.push(row);
  const all = usable.length === rows;
  for (const [name, column] of Object.entries(feet))
    if (!ofOneReading.includes(name)) kept[name] = all ? column : gather(column, usable);
  return average(kept, readingsOfAFoot(kept));
}

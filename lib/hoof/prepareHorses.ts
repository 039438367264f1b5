import { type ColumnInput, type Columns, rowCount, TextColumn, toColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import { groupRows } from '../sheet/groups.ts';
import { say } from '../words/say.ts';
import { average } from './average.ts';
import { context } from './context.ts';
import { measured } from './measured.ts';
import type { Problem } from './problem.ts';

/** Columns of a horse, in their order. */
const names = [
  ...context.filter(({ tables, name }) => tables.includes('horses') && name !== 'horse_id').map(({ name }) => name),
  ...measured.filter(({ table }) => table === 'horses').map(({ name }) => name),
];
const units = new Map(measured.map(({ name, unit }) => [name, unit]));

/**
 * One row a horse: those of the horses table first, then those that only the feet know.
 * @param horses  normalised, or left out: then what the feet say of their horses in columns of the same names
 * @param feet  normalised
 * @returns every column of a horse (empty where nobody wrote it), the table's own others; a problem for each row
 *   without a horse, which is left out, and each that names a horse again, which is used where the first is silent
 */
export function prepareHorses(
  horses: Columns | undefined,
  feet: Columns,
  file: string,
): { columns: Columns; problems: Problem[] } {
  const problems: Problem[] = [];
  const known = horses === undefined ? fromFeet(feet) : onePerHorse(horses, file, problems);
  const listed = toColumn(known.horse_id) as TextColumn;
  const all = [...new Set([...listed.values, ...presentLevels(toColumn(feet.horse_id) as TextColumn)])];
  const rowOf = new Map(listed.values.map((horse, row) => [horse, row]));
  const rows = all.map((horse) => rowOf.get(horse) ?? -1);
  const columns: Columns = Object.create(null);
  columns.horse_id = TextColumn.from(all);
  for (const name of names)
    columns[name] = Object.hasOwn(known, name) ? gather(known[name], rows) : empty(name, all.length);
  for (const [name, column] of Object.entries(known))
    if (!Object.hasOwn(columns, name)) columns[name] = gather(column, rows);
  return { columns, problems };
}

function presentLevels(column: TextColumn): string[] {
  const present = new Uint8Array(column.levels.length);
  for (const code of column.codes) if (code >= 0) present[code] = 1;
  return column.levels.filter((_, code) => present[code] === 1);
}

function empty(name: string, rows: number): ColumnInput {
  if (name === 'build') return new TextColumn(new Int32Array(rows).fill(-1), []);
  return { unit: units.get(name) ?? '1', values: new Float64Array(rows).fill(Number.NaN) };
}

function onePerHorse(horses: Columns, file: string, problems: Problem[]): Columns {
  const horse = toColumn(horses.horse_id) as TextColumn;
  const seen = new Set<number>();
  const usable: number[] = [];
  horse.codes.forEach((code, row) => {
    if (code < 0) return;
    if (seen.has(code))
      problems.push({
        ...{ code: 'same-row-twice', file, row: row + 2, column: 'horse_id', value: horse.at(row) },
        expected: say`one row a horse`,
        remedy: say`Remove or merge the row; meanwhile numbers are averaged and the first words count`,
      });
    usable.push(row);
    seen.add(code);
  });
  return merged(horses, usable);
}

function fromFeet(feet: Columns): Columns {
  const own: Columns = Object.create(null);
  for (const name of ['horse_id', ...names]) if (Object.hasOwn(feet, name)) own[name] = feet[name];
  const horse = toColumn(feet.horse_id) as TextColumn;
  const usable = Array.from({ length: rowCount(feet) }, (_, row) => row).filter((row) => horse.codes[row] >= 0);
  return merged(own, usable);
}

function merged(columns: Columns, rows: readonly number[]): Columns {
  const kept: Columns = Object.create(null);
  for (const [name, column] of Object.entries(columns)) kept[name] = gather(column, rows);
  const { readings, ...one } = average(kept, groupRows([toColumn(kept.horse_id)], rows.length));
  return one;
}

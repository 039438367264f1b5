import { group } from 'd3-array';
import { type Column, type Columns, TextColumn, toColumn } from '../../sheet/column.ts';
import { formatQuantity } from '../../sheet/display.ts';
import { schemas } from '../schemas.ts';
import type { PoolTables } from './pooled.ts';

/** As closely as a stranger may guess a horse's size by looking, in the unit of the column; an assumption without a source. */
const guessed: Readonly<Record<string, number>> = { kg: 50, cm: 5, mm: 50 };

export interface HorsesInWords {
  readonly horses: readonly string[];
  /** What people may know of each horse, by column: a word, or a size in steps as one may guess it; `''` for missing. */
  readonly known: Readonly<Record<string, readonly string[]>>;
}

/** What a table says of its horses that people may know who see them; where there is none, what the feet say. */
export function horsesInWords({ horses: listed, feet }: PoolTables): HorsesInWords {
  const table = listed ?? feet;
  const rows = rowsByHorse(table);
  const ofHorse = new Set(schemas.horses.columns.map(({ name }) => name));
  const names = Object.keys(table).filter((name) => name !== 'horse_id' && (listed !== undefined || ofHorse.has(name)));
  const known = names.map((name) => {
    const column = toColumn(table[name]);
    return [name, [...rows.values()].map((all) => all.map((row) => wordOf(column, row)).find((word) => word) ?? '')];
  });
  return { horses: [...rows.keys()], known: Object.fromEntries(known) };
}

/** The rows of each horse, in the order of the table. */
export function rowsByHorse(table: Columns): Map<string, number[]> {
  const horses = (toColumn(table.horse_id) as TextColumn).values;
  return group(horses.keys(), (row) => horses[row]);
}

function wordOf(column: Column, row: number): string {
  if (column instanceof TextColumn) return column.at(row);
  const value = column.values[row];
  if (Number.isNaN(value)) return '';
  const step = guessed[column.unit];
  if (step === undefined) return String(value);
  return formatQuantity(Math.round(value / step) * step, column.unit, { length: 'mm', mass: 'kg' }, { digits: 0 });
}

import { TextColumn } from '../sheet/column.ts';
import { isoFromDays } from '../sheet/days.ts';
import type { Table } from '../sheet/table.ts';
import type { Limb } from './limbs.ts';
import type { Foot } from './ranges.ts';

/** What is known of the foot in one row, besides its measurements; what isn't known is left out. */
export interface FootFacts extends Foot {
  readonly horse: string;
  readonly limb: Limb;
  readonly date: number;
  readonly moment: string;
  /** How many readings the row is the mean of. */
  readonly readings: number;
  /** In years, on that day. */
  readonly age?: number;
  readonly therapeutic: boolean;
  readonly poorlySeen: boolean;
}

/** Reads the facts of any row of the occasions, or of the feet. */
export function footFacts(table: Table): (row: number) => FootFacts {
  const has = new Set(table.names);
  const text = (name: string): ((row: number) => string) => {
    const column = has.has(name) ? table.column(name) : undefined;
    return column instanceof TextColumn ? (row) => column.at(row) : () => '';
  };
  const number = (name: string): ((row: number) => number) => {
    const column = has.has(name) ? table.column(name) : undefined;
    return column === undefined || column instanceof TextColumn ? () => Number.NaN : (row) => column.values[row];
  };
  const [horse, limb, moment, build] = ['horse_id', 'limb', 'moment', 'build'].map(text);
  const [date, readings, shod, weight, born, therapeutic, poor] = [
    ...['date', 'readings', 'shod', 'body_weight_kg', 'birth_year', 'therapeutic', 'poorly_seen'],
  ].map(number);
  const known = (value: number): number | undefined => (Number.isNaN(value) ? undefined : value);
  return (row) => ({
    horse: horse(row),
    limb: limb(row) as Limb,
    date: date(row),
    moment: moment(row),
    readings: known(readings(row)) ?? 1,
    build: build(row) || undefined,
    shod: Number.isNaN(shod(row)) ? undefined : shod(row) === 1,
    weightKg: known(weight(row)),
    age: known(Number(isoFromDays(date(row)).slice(0, 4)) - born(row)),
    therapeutic: therapeutic(row) === 1,
    poorlySeen: poor(row) === 1,
  });
}

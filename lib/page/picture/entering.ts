import { type Cell, cellAt } from '../../sheet/cell.ts';
import { daysFromIso } from '../../sheet/days.ts';
import type { Table } from '../../sheet/table.ts';
import type { KeptReading, PictureAnswer, Squareness } from './work.ts';

/** What a picture's measures do in the table of feet. */
export interface Entry {
  /** The row they go into; -1 for a new one. */
  readonly row: number;
  /** Which reading of this foot at this moment the row is. */
  readonly repeat: number;
  /** The measures by column, rounded to what a picture can tell. */
  readonly values: Readonly<Record<string, number>>;
  /** What a new row holds. */
  readonly cells: Readonly<Record<string, Cell>>;
}

/** What stands under the method of measuring: nobody should take a drawn foot for one that exists. */
const methodOf = ({ invented }: KeptReading) => (invented ? 'drawn picture' : 'photograph');

const QUALITY: Readonly<Record<Squareness['state'], string | null>> = {
  square: 'good',
  usable: 'fair',
  oblique: 'poor',
  unknown: null,
};

/**
 * Where a picture's measures belong: into the row they were entered into before; else beside what other pictures told of
 * the same foot at the same moment, where they fill only what is missing; else into a row of their own.
 * @param sheet  of feet
 * @returns `undefined` where there is nothing to enter, or no horse or date to enter it under
 */
export function entryOf(sheet: Table, reading: KeptReading, answer: PictureAnswer): Entry | undefined {
  const { horse, limb, date, moment } = reading.subject;
  const day = daysFromIso(date) ?? Number.NaN;
  const values = Object.fromEntries(
    answer.measures
      .filter(({ refused, value }) => !refused && Number.isFinite(value))
      .map(({ name, value }) => [name, Math.round(value * 100) / 100]),
  );
  if (Object.keys(values).length === 0 || horse.trim() === '' || Number.isNaN(day)) return undefined;
  const at = (name: string, row: number) => (sheet.names.includes(name) ? cellAt(sheet.column(name), row) : null);
  const method = methodOf(reading);
  const same: number[] = [];
  for (let row = 0; row < sheet.rows; row++)
    if (
      at('horse_id', row) === horse.trim() &&
      at('limb', row) === limb &&
      at('date', row) === day &&
      (at('moment', row) ?? 'between') === moment
    )
      same.push(row);
  const repeatOf = (row: number) => Number(at('repeat', row) ?? 1);
  const before = same.find((row) => repeatOf(row) === reading.entered?.repeat && at('method', row) === method);
  const room = same.find(
    (row) => at('method', row) === method && Object.keys(values).every((name) => at(name, row) === null),
  );
  const row = before ?? room ?? -1;
  const repeat = row >= 0 ? repeatOf(row) : Math.max(0, ...same.map(repeatOf)) + 1;
  const view_quality = QUALITY[answer.squareness?.state ?? 'unknown'];
  const circumstances = { method, ...(view_quality && { view_quality }) };
  const cells = { horse_id: horse.trim(), date: day, limb, moment, repeat, ...circumstances, ...values };
  return { row, repeat, values, cells };
}

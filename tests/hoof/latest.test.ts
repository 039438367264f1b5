import { expect, it } from 'vitest';
import { latestOccasions } from '../../lib/hoof/latest.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

/** The latest of Kit’s left fore, by day and moment of each row. */
const latest = (...rows: readonly (readonly [day: number, moment: string])[]) =>
  latestOccasions(
    plainTable({
      horse_id: { values: rows.map(() => 'Kit') },
      limb: { values: rows.map(() => 'LF') },
      date: { kind: 'date', values: Float64Array.from(rows, ([day]) => day) },
      moment: { values: rows.map(([, moment]) => moment) },
    }),
  );

it('the latest occasion of a foot is of its last day, whatever the moment and the order of rows', () => {
  expect(latest([5, 'after'], [9, 'before'], [7, 'after'])).toEqual([1]);
  expect(latest([9, 'before'], [5, 'after'])).toEqual([0]);
  expect(latest([5, 'before'], [9, 'after'])).toEqual([1]);
});

it('of several moments on a day it is the one after the work, then the one between', () => {
  expect(latest([9, 'after'], [9, 'before'], [9, 'between'])).toEqual([0]);
  expect(latest([9, 'before'], [9, 'between'])).toEqual([1]);
  expect(latest([9, 'before'], [9, 'between'], [9, 'after'])).toEqual([2]);
});

it('each foot has its own', () => {
  const table = plainTable({
    horse_id: { values: ['Kit', 'Bella', 'Kit', 'Kit'] },
    limb: { values: ['RH', 'LF', 'LF', 'RH'] },
    date: { kind: 'date', values: Float64Array.of(5, 1, 2, 3) },
    moment: { values: ['after', 'after', 'after', 'after'] },
  });
  expect(latestOccasions(table)).toEqual([0, 1, 2]);
});

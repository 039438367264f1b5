import { describe, expect, it } from 'vitest';
import { horseTable, intervalTable, termTable, termWordsTable } from '../../lib/hoof/intervalTables.ts';
import type { Columns } from '../../lib/sheet/column.ts';
import { handData, handFit } from './handFit.ts';

const none = Number.NaN;
const plain = (columns: Columns) =>
  Object.fromEntries(Object.entries(columns).map(([name, { values }]) => [name, Array.from<unknown>(values)]));

it('the table of the model has a row a term, a row a group that varies and one for what is left over', () => {
  expect(plain(termTable(handData, handFit))).toEqual({
    term: ['(Intercept)', 'interval_within', 'horse:limb (Intercept)', 'horse interval_within', 'residual'],
    meaning: [
      'where all below is at its base',
      'a week longer, within the same horse',
      'variation between feet of a horse',
      'variation between slopes of horses',
      'variation that is left over',
    ],
    estimate_mm: [1.5, 0.5, none, none, none],
    standard_error_mm: [0.25, 0.2, none, none, none],
    lower_mm: [1, 0.5 - 0.4, none, none, none],
    upper_mm: [2, 0.9, none, none, none],
    degrees_of_freedom: [12.34, 12.34, none, none, none],
    t: [6, 2.5, none, none, none],
    p: [0.0004, 0.02, none, none, none],
    standard_deviation_mm: [none, none, 0.75, 0.125, 1.25],
  });
});

it('in words it has as many decimals as the errors deserve, and nothing where there is nothing', () => {
  expect(plain(termWordsTable(handData, handFit, { length: 'mm', mass: 'kg' }))).toEqual({
    term: [
      'where all below is at its base',
      'a week longer, within the same horse',
      'between feet of a horse',
      'between slopes of horses',
      'left over',
    ],
    estimate: [
      '+1.5 ± 0.3 mm',
      '+0.5 ± 0.2 mm',
      'standard deviation 0.8 mm',
      'standard deviation 0.1 mm',
      'standard deviation 1.3 mm',
    ],
    'interval (95%)': ['+1.0 mm to +2.0 mm', '+0.1 mm to +0.9 mm', '', '', ''],
    'degrees of freedom': ['12.3', '12.3', '', '', ''],
    p: ['below 0.001', '0.020', '', '', ''],
  });
});

describe('the table of the horses', () => {
  it('counts feet, intervals and rows of each that are in the model', () => {
    const table = horseTable(handData, handFit);
    expect(plain(table)).toEqual({
      horse_id: ['Kit', 'Moss'],
      feet: [2, 1],
      intervals: [2, 1],
      rows: [3, 1],
      usual_interval_weeks: [7, 5],
      // (1 + 1 + 4) / 2 of Kit; one interval of Moss has no spread.
      spread_of_intervals_weeks: [Math.sqrt(3), none],
      effect_without_this_horse_mm: [0.3, 0.6],
      its_standard_error_mm: [0.35, 0.25],
    });
    expect(table.effect_without_this_horse_mm.error).toEqual(Float64Array.of(0.35, 0.25));
  });

  it('has no effect without a horse that was not left out', () => {
    const checks = { ...handFit.checks, without: [] };
    const { effect_without_this_horse_mm: effect, its_standard_error_mm: se } = horseTable(handData, {
      ...handFit,
      checks,
    });
    expect([effect.values, effect.error, se.values]).toEqual(Array(3).fill(Float64Array.of(none, none)));
  });
});

it('the table of the intervals has those in the model, with what the model made of them', () => {
  const table = intervalTable(handData, handFit);
  expect(plain(table)).toEqual({
    horse_id: ['Kit', 'Kit', 'Kit', 'Moss'],
    limb: ['LF', 'RF', 'LF', 'LF'],
    start_date: [0, 0, 42, 35],
    end_date: [42, 42, 105, 70],
    interval_within_weeks: [-1, -1, 2, 0],
    interval_mean_weeks: [7, 7, 7, 5],
    change_mm: [1, 2, 3, 5],
    season: ['Jan–Mar', 'Jan–Mar', 'Apr–Jun', 'Jan–Mar'],
    shod: ['shod', 'shod', 'shod', 'bare'],
    farrier: ['A', 'A', 'A', 'B'],
    fitted_mm: [1.1, 1.9, 3.2, 4.8],
    left_over_mm: [-0.1, 0.1, -0.2, 0.2],
  });
  expect(table.change_mm.error).toEqual(Float64Array.of(0.1, 0.2, 0.3, 0.5));
});

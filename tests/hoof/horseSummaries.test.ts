import { describe, expect, it } from 'vitest';
import { horseSummaries, summarised, summaryNames } from '../../lib/hoof/horseSummaries.ts';
import { endOf, type Limb, sideOf } from '../../lib/hoof/limbs.ts';
import { footRelations } from '../../lib/hoof/relations.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

type Row = readonly [horse: string, day: number, limb: Limb, value: number, error?: number];

/** Occasions of which every summarised column holds the same value. */
const summaries = (rows: readonly Row[], horses: readonly string[]) => {
  const values = Float64Array.from(rows, ([, , , value]) => value);
  const error = Float64Array.from(rows, ([, , , , error = Number.NaN]) => error);
  const occasions = plainTable(
    {
      horse_id: { values: rows.map(([horse]) => horse) },
      date: { kind: 'date', unit: 'd', values: Float64Array.from(rows, ([, day]) => day) },
      limb: { values: rows.map(([, , limb]) => limb) },
      end: { values: rows.map(([, , limb]) => endOf(limb)) },
      side: { values: rows.map(([, , limb]) => sideOf(limb)) },
      ...Object.fromEntries(summarised.map((name) => [name, { unit: 'mm', values, error }])),
    },
    footRelations.toReversed(),
  );
  return horseSummaries(occasions, horses);
};

describe('the summaries of a horse', () => {
  const columns = () =>
    summaries(
      [
        ['Kit', 9, 'RF', 54, 3],
        ['Kit', 9, 'LF', 58, 4],
        ['Bella', 7, 'LF', 40, 1],
        ['Kit', 5, 'RF', 50, 3],
        ['Stray', 99, 'LF', 1, 1],
        ['Kit', 7, 'LF', 54, 12],
        ['Kit', 7, 'RF', 60, 5],
        ['Bella', 6, 'RH', 44, 2],
      ],
      ['Bella', 'Kit', 'Moss'],
    );

  it('are all that are named, one row a horse', () => {
    expect(Object.keys(columns())).toEqual(summaryNames);
    for (const { values } of Object.values(columns())) expect(values).toHaveLength(3);
  });

  it('count its occasions and know the last day', () => {
    expect(columns().occasions_measured.values).toEqual(Float64Array.of(2, 5, 0));
    expect(columns().last_measured.values).toEqual(Float64Array.of(7, 9, Number.NaN));
  });

  it('are means of its front and of its hind feet, with their errors', () => {
    // (50 + 58 + 54 + 54 + 60) / 5 with √(9 + 16 + 9 + 144 + 25) / 5.
    expect(columns().frog_ratio_front.values).toEqual(Float64Array.of(40, 55.2, Number.NaN));
    expect((columns().frog_ratio_front.error as Float64Array)[1]).toBeCloseTo(Math.sqrt(203) / 5, 12);
    expect(columns().frog_ratio_hind.values).toEqual(Float64Array.of(44, Number.NaN, Number.NaN));
  });

  it('are left minus right over the occasions at which both were measured', () => {
    // 58 − 54 on one day and 54 − 60 on another, with errors of 5 and 13.
    expect(columns().wall_level_front_left_minus_right_mm).toMatchObject({
      unit: 'mm',
      values: Float64Array.of(Number.NaN, -1, Number.NaN),
    });
    const error = columns().wall_level_front_left_minus_right_mm.error as Float64Array;
    expect(error[1]).toBeCloseTo(Math.hypot(5, 13) / 2, 12);
    expect(columns().wall_level_hind_left_minus_right_mm.values).toEqual(new Float64Array(3).fill(Number.NaN));
  });
});

it('a herd without front feet has no means of them', () => {
  const columns = summaries([['Kit', 5, 'LH', 50]], ['Kit']);
  expect(columns.frog_ratio_front.values).toEqual(Float64Array.of(Number.NaN));
  expect(columns.frog_ratio_hind.values).toEqual(Float64Array.of(50));
});

import { describe, expect, it } from 'vitest';
import { columnErrors, poorViewFactor, withErrors, withinSd } from '../../lib/hoof/errors.ts';
import { repeatability } from '../../lib/stats/repeatability.ts';

/** Pairs of readings with the differences given; the within-foot SD is √(Σd²/2n). */
function pairs(differences: readonly number[]) {
  const values = Float64Array.from(differences.flatMap((d) => [50, 50 + d]));
  const codes = Int32Array.from(differences.flatMap((_, foot) => [foot, foot]));
  return { columns: { toe_angle_deg: { unit: 'deg', values } }, groups: { codes, count: differences.length } };
}

describe('the within-foot standard deviation', () => {
  it('of pairs is the root of half the mean squared difference', () => {
    const { columns, groups } = pairs([1, -1, 2, -2]);
    expect(withinSd(columns.toe_angle_deg.values, groups)).toEqual({ sd: Math.sqrt(10 / 8), degrees: 4 });
  });

  it('is none of single readings, and counts no foot without one', () => {
    const groups = { codes: Int32Array.of(0, 1, 2), count: 3 };
    expect(withinSd(Float64Array.of(50, 60, Number.NaN), groups)).toEqual({ sd: Number.NaN, degrees: 0 });
    const pair = { codes: Int32Array.of(0, 0, 1), count: 2 };
    expect(withinSd(Float64Array.of(50, 52, Number.NaN), pair)).toEqual({ sd: Math.SQRT2, degrees: 1 });
  });

  it('is that of the library’s repeatability, for any numbers of readings', () => {
    const readings = [[50, 52], [48], [51, 50.5, 53, 49], [60, 61, Number.NaN]];
    const values = Float64Array.from(readings.flat());
    const codes = Int32Array.from(readings.flatMap((each, foot) => each.map(() => foot)));
    const { sd, degrees } = withinSd(values, { codes, count: readings.length });
    const reference = repeatability(readings);
    expect(sd).toBeCloseTo(reference.withinSd, 12);
    expect(degrees).toBe(reference.df);
  });

  it('leaves out missing readings and those that are not to count', () => {
    const values = Float64Array.of(50, 52, Number.NaN, 90);
    const groups = { codes: Int32Array.of(0, 0, 0, 0), count: 1 };
    expect(withinSd(values, groups, Float64Array.of(0, 0, 0, 1))).toEqual({ sd: Math.sqrt(2), degrees: 1 });
  });

  it('is missing without repeats', () => {
    expect(withinSd(Float64Array.of(1, 2), { codes: Int32Array.of(0, 1), count: 2 })).toEqual({
      sd: Number.NaN,
      degrees: 0,
    });
  });
});

describe('the error of a column', () => {
  it('comes from the herd’s own repeats where there are ten degrees of freedom', () => {
    const { columns, groups } = pairs([2, -2, 2, -2, 2, -2, 2, -2, 2, -2]);
    expect(columnErrors(columns, groups)).toEqual([
      { name: 'toe_angle_deg', unit: 'deg', value: Math.sqrt(2), from: 'repeats', degrees: 10 },
    ]);
  });

  it('comes from the table of measured columns where there are fewer', () => {
    const { columns, groups } = pairs([2, -2, 2, -2, 2, -2, 2, -2, 2]);
    expect(columnErrors(columns, groups)).toEqual([
      { name: 'toe_angle_deg', unit: 'deg', value: 1, from: 'table', source: 'common practice, no source', degrees: 9 },
    ]);
  });

  it('is the table’s own where it brings one', () => {
    const values = Float64Array.of(50);
    const [own] = columnErrors({ toe_angle_deg: { unit: 'deg', values, error: Float64Array.of(3) } });
    expect(own).toMatchObject({ from: 'given', value: Number.NaN });
  });

  it('is enlarged where the foot was seen poorly', () => {
    const { columns } = pairs([1]);
    const errors = columnErrors(columns);
    expect(withErrors(columns, errors, Float64Array.of(0, 1)).toe_angle_deg.error).toEqual(
      Float64Array.of(1, poorViewFactor),
    );
  });

  it('counts only readings in a good view among the herd’s own repeats', () => {
    const { columns, groups } = pairs([2, -2, 2, -2, 2, -2, 2, -2, 2, -2, 40]);
    const poor = Float64Array.from({ length: 22 }, (_, row) => Number(row === 21));
    expect(columnErrors(columns, groups, poor)).toMatchObject([{ from: 'repeats', value: Math.sqrt(2), degrees: 10 }]);
  });

  it('is given beside how much the repeats are worth, even where the table brings its own', () => {
    const { columns, groups } = pairs([2, -2]);
    const error = new Float64Array(4).fill(3);
    expect(columnErrors({ toe_angle_deg: { ...columns.toe_angle_deg, error } }, groups)).toEqual([
      { name: 'toe_angle_deg', unit: 'deg', value: Number.NaN, from: 'given', degrees: 2 },
    ]);
  });

  it('stands beside each value, the table’s own where it brings one, and nowhere where it isn’t known', () => {
    const values = Float64Array.of(50, 51);
    const own = Float64Array.of(3, 4);
    const columns = { toe_angle_deg: { unit: 'deg', values }, heel_angle_deg: { unit: 'deg', values, error: own } };
    const errors = columnErrors(columns);
    expect(errors.map(({ from, degrees }) => [from, degrees])).toEqual([
      ['table', 0],
      ['given', 0],
    ]);
    const all = withErrors({ ...columns, mood: { values: ['calm', ''] } }, errors);
    expect(all.toe_angle_deg).toEqual({ unit: 'deg', values, error: Float64Array.of(1, 1) });
    expect(all.heel_angle_deg.error).toBe(own);
    expect(all.mood).toEqual({ values: ['calm', ''] });
  });

  it('is none of a measured column that holds text', () => {
    expect(columnErrors({ toe_angle_deg: { values: ['steep'] } })).toEqual([]);
  });

  it('says nothing of columns that are no measurements', () => {
    expect(columnErrors({ mood: { values: Float64Array.of(1) } })).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { joinHorses, joinVisits } from '../../lib/hoof/joins.ts';
import { VisitIndex } from '../../lib/hoof/visitIndex.ts';
import { type Columns, TextColumn } from '../../lib/sheet/column.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

const text = (...values: string[]): TextColumn => TextColumn.from(values);
const number = (...values: number[]) => ({ values: Float64Array.from(values) });

describe('what is known of a foot’s horse', () => {
  const horses = plainTable({
    horse_id: { values: ['Kit', 'Bella'] },
    birth_year: { unit: '1', values: Float64Array.of(2012, 2015) },
    body_weight_kg: { unit: 'kg', values: Float64Array.of(500, 300), error: Float64Array.of(20, 10) },
    owner: { values: ['Jo', 'Al'] },
  });

  it('comes to each of its feet, with its error', () => {
    const joined = joinHorses({ horse_id: text('Bella', 'Kit', 'Bella') }, horses);
    expect(joined.birth_year.values).toEqual(Float64Array.of(2015, 2012, 2015));
    expect(joined.body_weight_kg).toMatchObject({
      values: Float64Array.of(300, 500, 300),
      error: Float64Array.of(10, 20, 10),
    });
  });

  it('is missing for a foot of no horse, or of one that isn’t listed', () => {
    const joined = joinHorses({ horse_id: text('Stray', '', 'Bella') }, horses);
    expect(joined.birth_year.values).toEqual(Float64Array.of(Number.NaN, Number.NaN, 2015));
  });

  it('is only what belongs to a foot, and only what the table has', () => {
    expect(Object.keys(joinHorses({ horse_id: text('Bella') }, horses))).toEqual(['birth_year', 'body_weight_kg']);
  });
});

describe('what is known of a foot’s visit', () => {
  interface Foot {
    readonly horse?: string;
    readonly limb?: string;
    readonly date?: number;
    readonly moment?: string;
  }
  interface Visit extends Foot {
    readonly work?: string;
    readonly farrier?: string;
    readonly therapeutic?: number;
  }
  const horses = ['Kit', 'Bella', 'Moss'];
  const joinedTo = (feet: readonly Foot[], visits: readonly Visit[]): Columns => {
    const of = (rows: readonly Visit[], name: 'limb' | 'moment' | 'work' | 'farrier', otherwise = '') =>
      text(...rows.map((row) => row[name] ?? otherwise));
    const horseOf = (rows: readonly Foot[]): TextColumn => {
      const codes = Int32Array.from(rows, ({ horse = 'Bella' }) => horses.indexOf(horse));
      return new TextColumn(codes, horses);
    };
    const dateOf = (rows: readonly Foot[]) => number(...rows.map(({ date = 100 }) => date));
    const table = {
      date: dateOf(visits),
      work: of(visits, 'work', 'trim'),
      farrier: of(visits, 'farrier'),
      therapeutic: number(...visits.map(({ therapeutic = Number.NaN }) => therapeutic)),
    };
    const index = new VisitIndex(
      { horse: horseOf(visits), date: table.date.values, limb: of(visits, 'limb'), work: table.work },
      horses,
    );
    const keys = { horse_id: horseOf(feet), limb: of(feet, 'limb', 'LF'), moment: of(feet, 'moment', 'between') };
    return joinVisits({ ...keys, date: dateOf(feet) }, table, index);
  };
  const words = (columns: Columns, name: string) => Array.from(columns[name].values as ArrayLike<string>);
  const numbers = (columns: Columns, name: string) => Array.from(columns[name].values as Float64Array);

  it('is of its own horse and limb', () => {
    const visits = horses.flatMap((horse) =>
      ['LF', 'RF', 'LH', 'RH'].map((limb) => ({ horse, limb, farrier: `${horse} ${limb}` })),
    );
    const feet = visits.map(({ horse, limb }) => ({ horse, limb }));
    expect(words(joinedTo(feet, visits), 'farrier')).toEqual(visits.map(({ farrier }) => farrier));
  });

  it('is nothing for a foot without a horse, a limb or a date', () => {
    const visits = [
      { date: 90, farrier: 'A', therapeutic: 1 },
      { date: 90, horse: 'Moss', farrier: 'B' },
    ];
    const joined = joinedTo([{ horse: '' }, { limb: '' }, { date: Number.NaN }, {}], visits);
    expect(words(joined, 'farrier')).toEqual(['', '', '', 'A']);
    expect(numbers(joined, 'days_since_work')).toEqual([Number.NaN, Number.NaN, Number.NaN, 10]);
    expect(numbers(joined, 'therapeutic')).toEqual([Number.NaN, Number.NaN, Number.NaN, 1]);
  });

  it('is nothing before the first visit', () => {
    const joined = joinedTo([{ date: 80 }], [{ date: 90, farrier: 'A', therapeutic: 0 }]);
    expect([words(joined, 'farrier'), numbers(joined, 'days_since_work')]).toEqual([[''], [Number.NaN]]);
    expect(numbers(joined, 'therapeutic')).toEqual([Number.NaN]);
  });

  it('before the work of the day is the day’s farrier, and days since the visit before', () => {
    const visits = [
      { date: 100, farrier: 'B' },
      { date: 60, farrier: 'A' },
    ];
    const joined = joinedTo([{ moment: 'before' }, { moment: 'after' }, {}], visits);
    expect(words(joined, 'farrier')).toEqual(['B', 'B', 'B']);
    expect(numbers(joined, 'days_since_work')).toEqual([40, 0, 0]);
  });

  it.each([
    [1, 0, 1],
    [0, 1, 1],
    [1, Number.NaN, 1],
    [Number.NaN, 1, 1],
    [0, 0, 0],
    [0, Number.NaN, 0],
    [Number.NaN, 0, 0],
    [Number.NaN, Number.NaN, Number.NaN],
  ])('is therapeutic where the visit of the day (%d) or the one before (%d) says so: %d', (same, made, expected) => {
    const visits = [
      { date: 60, therapeutic: made },
      { date: 100, therapeutic: same },
    ];
    expect(numbers(joinedTo([{ moment: 'before' }], visits), 'therapeutic')).toEqual([expected]);
  });
});

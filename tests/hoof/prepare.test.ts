import { describe, expect, it } from 'vitest';
import { measured } from '../../lib/hoof/measured.ts';
import { occasionColumns } from '../../lib/hoof/occasions.ts';
import { prepareFeet } from '../../lib/hoof/prepareFeet.ts';
import { prepareHorses } from '../../lib/hoof/prepareHorses.ts';
import { prepareVisits, visitsFromFeet } from '../../lib/hoof/prepareVisits.ts';
import { type Columns, TextColumn } from '../../lib/sheet/column.ts';

const text = (...values: string[]): TextColumn => TextColumn.from(values);
const number = (...values: number[]) => ({ unit: '1', values: Float64Array.from(values) });
const yesNo = (...values: number[]) => ({ kind: 'boolean', values: Float64Array.from(values) }) as const;
const days = (...values: number[]) => ({ kind: 'date', unit: 'd', values: Float64Array.from(values) }) as const;
const valuesOf = (columns: Columns, name: string): unknown[] => Array.from(columns[name].values as ArrayLike<unknown>);
const none = Number.NaN;

/** Normalised feet of Bella on one day, a row a limb. */
const feet = (...limbs: string[]): Columns => ({
  horse_id: text(...limbs.map(() => 'Bella')),
  date: days(...limbs.map(() => 9)),
  limb: text(...limbs),
});

describe('feet', () => {
  const prepared = (columns: Columns) => prepareFeet(columns, 'feet.csv').columns;

  it('have their keys first, then circumstances, every measured column, and the table’s own last', () => {
    const own = { mood: text('calm'), toe_angle_deg: number(50), shod: yesNo(1), ...feet('LF'), observer: text('Ida') };
    const ofFeet = measured.filter(({ table }) => table === 'feet').map(({ name }) => name);
    expect(Object.keys(prepared(own))).toEqual([
      ...['horse_id', 'date', 'limb', 'moment', 'repeat', 'shod', 'observer'],
      ...ofFeet,
      ...['end', 'side', 'poorly_seen', 'mood'],
    ]);
    expect(valuesOf(prepared(own), 'toe_angle_deg')).toEqual([50]);
    expect(prepared(own).toe_length_mm).toEqual({ unit: 'mm', values: Float64Array.of(none) });
  });

  it('are front or hind, left or right, or neither where nobody knows', () => {
    const columns = prepared(feet('RH', 'LF', '', 'RF', 'LH'));
    expect(valuesOf(columns, 'end')).toEqual(['hind', 'front', '', 'front', 'hind']);
    expect(valuesOf(columns, 'side')).toEqual(['right', 'left', '', 'right', 'left']);
  });

  it('were measured between visits where nobody wrote when', () => {
    expect(valuesOf(prepared(feet('LF', 'RF')), 'moment')).toEqual(['between', 'between']);
    const some = (...moments: string[]) =>
      valuesOf(prepared({ ...feet(...moments.map(() => 'LF')), moment: text(...moments) }), 'moment');
    expect(some('after', '', 'before')).toEqual(['after', 'between', 'before']);
    expect(some('', 'between', 'after')).toEqual(['between', 'between', 'after']);
  });

  it('with every moment written keep the column that came in', () => {
    const moment = text('after', 'before');
    expect(prepared({ ...feet('LF', 'RF'), moment }).moment).toBe(moment);
    expect(prepared({ ...feet('LF', 'RF'), moment }).moment).toMatchObject({ levels: ['after', 'before'] });
  });

  it('are seen poorly where the view was poor or hair lay over the hairline', () => {
    const rows = feet('LF', 'RF', 'LH', 'RH');
    const view_quality = text('good', 'poor', '', 'fair');
    const hair_over_hairline = yesNo(0, none, 1, none);
    expect(valuesOf(prepared({ ...rows, view_quality, hair_over_hairline }), 'poorly_seen')).toEqual([0, 1, 1, 0]);
    expect(valuesOf(prepared({ ...rows, view_quality: text('', '', '', 'good') }), 'poorly_seen')).toEqual([
      0, 0, 0, 0,
    ]);
    expect(valuesOf(prepared({ ...rows, hair_over_hairline }), 'poorly_seen')).toEqual([0, 0, 1, 0]);
    expect(prepared(rows).poorly_seen).toEqual({ kind: 'boolean', values: new Float64Array(4) });
  });

  it('read more than once under one number are each a problem, foot by foot', () => {
    const { columns, problems } = prepareFeet(
      { ...feet('LF', 'LF', 'RF', 'LF', 'LF', 'LF'), repeat: number(1, 1, 1, none, 1, 3) },
      'feet.csv',
    );
    expect(valuesOf(columns, 'repeat')).toEqual([1, 1, 1, 4, 1, 3]);
    expect(problems.map(({ row, value }) => [row, value])).toEqual([
      [3, '1'],
      [6, '1'],
    ]);
    expect(problems[0]).toMatchObject({
      ...{ code: 'same-row-twice', file: 'feet.csv', column: '' },
      expected: 'one row for each horse, date, limb, moment and repeat',
      remedy: expect.stringMatching(/^Give each reading of a foot its own repeat number/),
    });
  });
});

describe('occasions', () => {
  it('leave out rows without a key and what belongs to one reading, and average the rest', () => {
    const prepared = prepareFeet(
      {
        horse_id: text('Bella', '', 'Bella', 'Bella', 'Bella'),
        date: days(9, 9, none, 9, 9),
        limb: text('LF', 'LF', 'LF', '', 'LF'),
        toe_angle_deg: { unit: 'deg', values: Float64Array.of(50, 1, 2, 3, 53) },
        ...{ observer: text('', '', '', '', ''), method: text('', '', '', '', ''), mood: text('calm', '', '', '', '') },
        ...{ view_quality: text('', '', '', '', ''), hair_over_hairline: yesNo(none, none, none, none, none) },
      },
      'feet',
    ).columns;
    const occasions = occasionColumns(prepared);
    expect(valuesOf(occasions, 'toe_angle_deg')).toEqual([51.5]);
    expect(valuesOf(occasions, 'readings')).toEqual([2]);
    const missing = Object.keys(prepared).filter((name) => !Object.hasOwn(occasions, name));
    expect(missing).toEqual(['repeat', 'observer', 'method', 'view_quality', 'hair_over_hairline']);
  });
});

describe('horses', () => {
  const some = { horse_id: text('Kit', '', 'Bella', 'Kit') };

  it('are those of their table, then those that only the feet know, with every column of a horse', () => {
    const { columns, problems } = prepareHorses(
      { horse_id: text('Moss', 'Kit'), owner: text('Jo', 'Al'), birth_year: number(2012, 2015) },
      some,
      'horses.csv',
    );
    expect(Object.keys(columns)).toEqual([
      'horse_id',
      'birth_year',
      'build',
      'weight_kg',
      'girth_cm',
      'length_cm',
      'owner',
    ]);
    expect(valuesOf(columns, 'horse_id')).toEqual(['Moss', 'Kit', 'Bella']);
    expect(valuesOf(columns, 'birth_year')).toEqual([2012, 2015, none]);
    expect(valuesOf(columns, 'owner')).toEqual(['Jo', 'Al', '']);
    expect(columns.girth_cm).toEqual({ unit: 'cm', values: Float64Array.of(none, none, none) });
    expect(valuesOf(columns, 'build')).toEqual(['', '', '']);
    expect(problems).toEqual([]);
  });

  it('may be known from the feet alone, whichever comes first there', () => {
    const { columns } = prepareHorses({ horse_id: text('Moss') }, some, 'horses');
    expect(valuesOf(columns, 'horse_id')).toEqual(['Moss', 'Kit', 'Bella']);
  });

  it('have a year of birth that is a pure number where nobody knows it', () => {
    expect(prepareHorses(undefined, some, 'horses').columns.birth_year).toEqual({
      ...{ unit: '1', values: Float64Array.of(none, none) },
    });
  });

  it('that no foot is of, though the dictionary has their names, are none', () => {
    const horse_id = new TextColumn(Int32Array.of(1, -1), ['Gone', 'Kit']);
    expect(valuesOf(prepareHorses(undefined, { horse_id }, 'horses').columns, 'horse_id')).toEqual(['Kit']);
  });

  it('written twice are averaged, their first words count, and each row more is a problem', () => {
    const { columns, problems } = prepareHorses(
      {
        horse_id: text('Kit', '', 'Kit', 'Kit'),
        weight_kg: number(500, 9, 520, none),
        build: text('', '', 'cob', 'pony'),
      },
      some,
      'horses.csv',
    );
    expect(valuesOf(columns, 'weight_kg')).toEqual([510, none]);
    expect(valuesOf(columns, 'build')).toEqual(['cob', '']);
    expect(problems).toEqual(
      [4, 5].map((row) => ({
        ...{ code: 'same-row-twice', file: 'horses.csv', row, column: 'horse_id', value: 'Kit' },
        expected: 'one row a horse',
        remedy: 'Remove or merge the row; meanwhile numbers are averaged and the first words count',
      })),
    );
  });

  it('are what their feet say where they have no table', () => {
    const { columns } = prepareHorses(
      undefined,
      {
        ...some,
        weight_kg: number(500, 9, 300, 520),
        toe_angle_deg: number(1, 2, 3, 4),
        mood: text('a', 'b', 'c', 'd'),
      },
      'horses',
    );
    expect(valuesOf(columns, 'horse_id')).toEqual(['Kit', 'Bella']);
    expect(valuesOf(columns, 'weight_kg')).toEqual([510, 300]);
    expect(Object.keys(columns)).toEqual(['horse_id', 'birth_year', 'build', 'weight_kg', 'girth_cm', 'length_cm']);
  });
});

describe('visits', () => {
  it('have every column of a visit, empty where nobody wrote it, and their own after them', () => {
    const bare = prepareVisits({ mood: text('calm'), date: days(9), horse_id: text('Bella') });
    expect(Object.keys(bare)).toEqual(['horse_id', 'date', 'farrier', 'work', 'therapeutic', 'mood']);
    expect([...valuesOf(bare, 'farrier'), ...valuesOf(bare, 'work')]).toEqual(['', '']);
    expect(bare.therapeutic).toEqual({ kind: 'boolean', values: Float64Array.of(none) });
    const full = { ...bare, farrier: text('A'), work: text('trim'), therapeutic: yesNo(1) };
    expect(prepareVisits(full)).toEqual(full);
  });

  it('are the days on which feet were measured before or after the work, with what the feet say of them', () => {
    const visits = visitsFromFeet({
      horse_id: text('Kit', 'Kit', 'Bella', 'Kit', '', 'Kit', 'Kit', 'Kit'),
      date: days(9, 9, 9, 9, 9, none, 12, 15),
      limb: text('LF', 'RF', 'LF', 'LH', 'LF', 'LF', 'LF', 'LF'),
      moment: text('before', 'after', 'after', 'between', 'after', 'after', '', 'before'),
      farrier: text('', 'M. Alder', '', 'J. Birch', 'J. Birch', 'J. Birch', '', ''),
      therapeutic: yesNo(0, 1, none, none, 1, 1, 1, 0),
    });
    expect(Object.keys(visits)).toEqual(['horse_id', 'date', 'farrier', 'therapeutic']);
    expect(valuesOf(visits, 'horse_id')).toEqual(['Kit', 'Bella', 'Kit']);
    expect(valuesOf(visits, 'date')).toEqual([9, 9, 15]);
    expect(valuesOf(visits, 'farrier')).toEqual(['M. Alder', '', '']);
    expect(valuesOf(visits, 'therapeutic')).toEqual([1, none, 0]);
  });

  it('are none where nobody wrote a moment', () => {
    expect(valuesOf(visitsFromFeet(feet('LF', 'RF')), 'horse_id')).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { HerdError } from '../../lib/hoof/herdError.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { type Cells, columnsOf, errorsOf, numbers, texts } from './feet.ts';

const foot: Cells = { horse_id: 'Bella', date: '2026-03-09', limb: 'LF' };

describe('a herd from the barest table', () => {
  const { feet, horses, visits, intervals, occasions, problems } = herd({
    feet: columnsOf([
      { ...foot, toe_angle_deg: 52, pastern_angle_deg: 54 },
      { ...foot, limb: 'RF', toe_angle_deg: 50, pastern_angle_deg: 54 },
    ]),
  });

  it('has every computed column, missing where nothing was measured', () => {
    for (const { name, table } of measures) expect((table === 'feet' ? feet : horses).names).toContain(name);
    expect(numbers(feet, 'toe_minus_pastern_deg')).toEqual([-2, -4]);
    expect(numbers(feet, 'toe_angle_left_minus_right_deg')).toEqual([2, 2]);
    expect(numbers(feet, 'frog_ratio')).toEqual([Number.NaN, Number.NaN]);
    expect(numbers(horses, 'body_weight_kg')).toEqual([Number.NaN]);
  });

  it('says which end and side each foot is, and that nobody wrote the moment', () => {
    expect(texts(feet, 'end')).toEqual(['front', 'front']);
    expect(texts(feet, 'side')).toEqual(['left', 'right']);
    expect(texts(feet, 'moment')).toEqual(['between', 'between']);
    expect(numbers(feet, 'repeat')).toEqual([1, 1]);
  });

  it('lists its horses and has no visits, intervals or problems', () => {
    expect(texts(horses, 'horse_id')).toEqual(['Bella']);
    expect([visits.rows, intervals.rows, occasions.rows]).toEqual([0, 0, 2]);
    expect(problems).toEqual([]);
  });

  it('knows each column’s title and unit', () => {
    expect(feet.describe('toe_angle_deg')).toMatchObject({ title: 'Toe angle', unit: 'deg', origin: 'measured' });
    expect(feet.describe('frog_ratio')).toMatchObject({ title: 'Frog width to length', origin: 'computed' });
  });
});

describe('repeats', () => {
  it('are numbered where nobody did, after those that have a number', () => {
    const rows = [foot, { ...foot, repeat: 2 }, foot, { ...foot, limb: 'RF' }];
    expect(numbers(herd({ feet: columnsOf(rows) }).feet, 'repeat')).toEqual([3, 2, 4, 1]);
    expect(numbers(herd({ feet: columnsOf([foot, foot]) }).feet, 'repeat')).toEqual([1, 2]);
  });

  it('with one number twice are both kept, and a problem unless the file’s reader has said so', () => {
    const rows = columnsOf([
      { ...foot, repeat: 1 },
      { ...foot, repeat: 1 },
    ]);
    const { feet, problems } = herd({ feet: rows }, { files: { feet: 'feet.csv' } });
    expect(feet.rows).toBe(2);
    expect(problems).toMatchObject([{ code: 'same-row-twice', file: 'feet.csv', row: 3 }]);
    expect(herd({ feet: rows }, { problems: [] }).problems).toEqual([]);
  });

  it('become one occasion with a smaller error', () => {
    const { feet, occasions } = herd({
      feet: columnsOf([
        { ...foot, toe_angle_deg: 50 },
        { ...foot, toe_angle_deg: 52 },
        { ...foot, toe_angle_deg: 54, view_quality: 'poor' },
      ]),
    });
    expect(numbers(occasions, 'toe_angle_deg')).toEqual([52]);
    expect(numbers(occasions, 'readings')).toEqual([3]);
    expect([...errorsOf(feet, 'toe_angle_deg')]).toEqual([1, 1, 2]);
    expect(errorsOf(occasions, 'toe_angle_deg')[0]).toBeCloseTo(Math.sqrt(6) / 3, 12);
    expect(numbers(occasions, 'poorly_seen')).toEqual([1]);
  });

  it('of the same foot before and after the work are two occasions', () => {
    const { occasions } = herd({
      feet: columnsOf([
        { ...foot, moment: 'before' },
        { ...foot, moment: 'after' },
      ]),
    });
    expect(texts(occasions, 'moment')).toEqual(['before', 'after']);
  });
});

it('feet that lack a key are kept and named, with the row that reading found where it did', () => {
  const feet = columnsOf([{ ...foot }, { ...foot, limb: '' }, { ...foot, horse_id: ' ', limb: 'RF' }]);
  expect(herd({ feet }).feet.rows).toBe(3);
  expect(herd({ feet }).problems.map(({ code, row, column }) => [code, row, column])).toEqual([
    ['no-key', 4, 'horse_id'],
    ['no-key', 3, 'limb'],
  ]);
  const read = herd({ feet }, { problems: [{ ...herd({ feet }).problems[0], row: 9 }] });
  expect(read.problems.map(({ code, row }) => [code, row])).toEqual([['no-key', 9]]);
});

describe('horses', () => {
  it('bring build, year of birth and weight to their feet', () => {
    const { feet, horses } = herd({
      feet: columnsOf([foot, { ...foot, horse_id: 'Kit' }, { ...foot, horse_id: 'Stray' }]),
      horses: columnsOf([
        { horse_id: 'Kit', build: 'Draft', birth_year: 2012, girth_cm: 180, length_cm: 170, owner: 'Jo' },
        { horse_id: 'Bella', build: 'pony', weight_kg: 300 },
      ]),
    });
    expect(texts(feet, 'build')).toEqual(['pony', 'heavy', '']);
    expect(numbers(feet, 'birth_year')).toEqual([Number.NaN, 2012, Number.NaN]);
    expect(numbers(feet, 'weight_kg')).toEqual([300, Number.NaN, Number.NaN]);
    expect(numbers(feet, 'body_weight_kg')[1]).toBeCloseTo((180 ** 2 * 170) / 11900, 9);
    expect(texts(horses, 'horse_id')).toEqual(['Kit', 'Bella', 'Stray']);
    expect(texts(horses, 'owner')).toEqual(['Jo', '', '']);
  });

  it('weighed are trusted more than estimated ones', () => {
    const { horses } = herd({
      feet: columnsOf([foot]),
      horses: columnsOf([
        { horse_id: 'Bella', weight_kg: 463, girth_cm: 180, length_cm: 170 },
        { horse_id: 'Kit', girth_cm: 180, length_cm: 170 },
      ]),
    });
    const [values, error] = [numbers(horses, 'body_weight_kg'), errorsOf(horses, 'body_weight_kg')];
    expect(values).toEqual([463, (180 ** 2 * 170) / 11900]);
    expect(error[0]).toBe(2);
    // 5.6 percent of the formula, 2 cm of girth counted twice, 3 cm of length.
    const share = Math.hypot(0.045 * Math.sqrt(Math.PI / 2), (2 * 2) / 180, 3 / 170);
    expect(error[1] / values[1]).toBeCloseTo(share, 9);
  });

  it('may stand in the feet’s own table', () => {
    const { feet, horses } = herd({
      feet: columnsOf([
        { ...foot, build: 'pony', weight_kg: 310 },
        { ...foot, limb: 'RF' },
      ]),
    });
    expect(numbers(horses, 'weight_kg')).toEqual([310]);
    expect(texts(feet, 'build')).toEqual(['pony', 'pony']);
  });

  it('without a name or named twice are problems', () => {
    const { problems, horses } = herd({
      feet: columnsOf([foot]),
      horses: columnsOf([
        { horse_id: 'Bella', weight_kg: 300 },
        { weight_kg: 1000 },
        { horse_id: 'Bella', weight_kg: 310 },
      ]),
    });
    expect(problems.map(({ code, row }) => [code, row])).toEqual([
      ['no-key', 3],
      ['same-row-twice', 4],
    ]);
    expect(numbers(horses, 'weight_kg')).toEqual([305]);
  });

  it('use another divisor and another share in front where asked', () => {
    const tables = {
      feet: columnsOf([
        { ...foot, foot_width_mm: 120, foot_length_mm: 130 },
        { ...foot, limb: 'LH', foot_width_mm: 120, foot_length_mm: 130 },
      ]),
      horses: columnsOf([{ horse_id: 'Bella', girth_cm: 180, length_cm: 170 }]),
    };
    const { feet } = herd(tables, { weightDivisor: 11400, shareInFront: 0.6 });
    const weight = (180 ** 2 * 170) / 11400;
    expect(numbers(feet, 'body_weight_kg')[0]).toBeCloseTo(weight, 9);
    const [front, hind] = numbers(feet, 'sole_load_kg_per_cm2');
    expect(front / hind).toBeCloseTo(1.5, 12);
    expect(front).toBeCloseTo((weight * 0.3) / ((Math.PI / 4) * 12 * 13), 9);
    expect(() => herd(tables, { shareInFront: 57.5 })).toThrow(/expected a share between 0 and 1/);
    expect(() => herd(tables, { weightDivisor: 0 })).toThrow(HerdError);
  });

  it('are summed up front and hind, left and right', () => {
    const { horses } = herd({
      feet: columnsOf([
        { ...foot, toe_angle_deg: 50 },
        { ...foot, limb: 'RF', toe_angle_deg: 53 },
        { ...foot, limb: 'RF', toe_angle_deg: 55 },
        { ...foot, limb: 'LH', toe_angle_deg: 56 },
        { ...foot, date: '2026-04-20', toe_angle_deg: 52 },
      ]),
    });
    expect(numbers(horses, 'toe_angle_front_deg')).toEqual([52]);
    expect(numbers(horses, 'toe_angle_hind_deg')).toEqual([56]);
    expect(numbers(horses, 'toe_angle_front_left_minus_right_deg')).toEqual([-4]);
    expect(numbers(horses, 'toe_angle_hind_left_minus_right_deg')).toEqual([Number.NaN]);
    expect(numbers(horses, 'occasions_measured')).toEqual([4]);
    expect(texts(horses, 'horse_id')).toEqual(['Bella']);
  });
});

describe('visits', () => {
  const tables = {
    feet: columnsOf([
      { ...foot, date: '2026-01-05', moment: 'before' },
      { ...foot, date: '2026-01-05', moment: 'after' },
      { ...foot, date: '2026-02-01', moment: 'between' },
      { ...foot, date: '2026-02-16', moment: 'before' },
      { ...foot, date: '2025-12-01', moment: 'between' },
    ]),
    visits: columnsOf([
      { horse_id: 'Bella', date: '2026-02-16', farrier: 'J. Birch', work: 'reset', therapeutic: 'no' },
      { horse_id: 'Bella', date: '2026-01-05', farrier: 'M. Alder', work: 'Trimmed', therapeutic: 'yes' },
      { horse_id: 'Bella', date: '2026-01-20', work: 'none' },
    ]),
  };

  it('bring the farrier and the work of the day, else of the last visit before', () => {
    const { feet } = herd(tables);
    expect(texts(feet, 'farrier')).toEqual(['M. Alder', 'M. Alder', 'M. Alder', 'J. Birch', '']);
    expect(texts(feet, 'work')).toEqual(['trim', 'trim', 'trim', 'reset', '']);
  });

  it('say how many days ago the foot was made what it is', () => {
    expect(numbers(herd(tables).feet, 'days_since_work')).toEqual([Number.NaN, 0, 27, 42, Number.NaN]);
  });

  it('keep a foot therapeutic until the next visit is over', () => {
    expect(numbers(herd(tables).feet, 'therapeutic')).toEqual([1, 1, 1, 1, Number.NaN]);
  });

  it('may be for one foot only', () => {
    const { feet } = herd({
      feet: columnsOf([
        { ...foot, moment: 'after' },
        { ...foot, limb: 'RF', moment: 'after' },
      ]),
      visits: columnsOf([{ horse_id: 'Bella', date: '2026-03-09', limb: 'left fore', therapeutic: 'yes' }]),
    });
    expect(numbers(feet, 'therapeutic')).toEqual([1, Number.NaN]);
  });

  it('are taken from the feet where there is no table of them', () => {
    const { feet, visits } = herd({
      feet: columnsOf([
        { ...foot, moment: 'after', farrier: 'M. Alder', therapeutic: 'yes' },
        { ...foot, date: '2026-04-20', moment: 'before', farrier: 'M. Alder' },
      ]),
    });
    expect(visits.rows).toBe(2);
    expect(numbers(feet, 'days_since_work')).toEqual([0, 42]);
    expect(numbers(feet, 'therapeutic')).toEqual([1, Number.NaN]);
  });

  it('twice on a day are a problem', () => {
    const visits = columnsOf([
      { horse_id: 'Bella', date: '2026-03-09', farrier: 'M. Alder' },
      { horse_id: 'Bella', date: '2026-03-09', farrier: 'J. Birch' },
    ]);
    const { problems, feet } = herd({ feet: columnsOf([foot]), visits }, { files: { visits: 'visits.csv' } });
    expect(problems).toMatchObject([{ code: 'same-row-twice', file: 'visits.csv', row: 3, value: 'Bella' }]);
    expect(texts(feet, 'farrier')).toEqual(['M. Alder']);
  });
});

it('a table that was written with its computed columns is read again to the same herd', () => {
  const rows = [
    { ...foot, toe_angle_deg: 52, pastern_angle_deg: 54, moment: 'before', mood: 'calm' },
    { ...foot, toe_angle_deg: 51, pastern_angle_deg: 54, moment: 'after', mood: '' },
  ];
  const horses = columnsOf([{ horse_id: 'Bella', weight_kg: 300, build: 'pony' }]);
  const once = herd({ feet: columnsOf(rows), horses });
  const written = Object.fromEntries(once.feet.names.map((name) => [name, once.feet.column(name)]));
  const writtenHorses = Object.fromEntries(once.horses.names.map((name) => [name, once.horses.column(name)]));
  const again = herd({ feet: written, horses: writtenHorses });
  expect(again.feet.names).toEqual(once.feet.names);
  for (const name of once.feet.names) expect(again.feet.column(name).values).toEqual(once.feet.column(name).values);
  expect(again.horses.names).toEqual(once.horses.names);
  expect(again.recomputed).toContain('toe_minus_pastern_deg');
  expect(again.recomputed).not.toContain('mood');
});

it('undoing never takes a built-in column away', () => {
  const { feet } = herd({ feet: columnsOf([{ ...foot, toe_angle_deg: 52 }]) });
  feet.undo();
  feet.set('toe_angle_deg', 0, 50).undo();
  expect(numbers(feet, 'toe_angle_deg')).toEqual([52]);
  expect(feet.names).toContain('toe_minus_pastern_deg');
});

it('rows that nobody can place are kept in the feet and in no occasion', () => {
  const { feet, occasions, intervals } = herd({
    feet: columnsOf([
      { ...foot, toe_angle_deg: 50 },
      { ...foot, limb: 'left' },
      { ...foot, date: 'soon' },
      { ...foot, horse_id: '' },
    ]),
  });
  expect([feet.rows, occasions.rows, intervals.rows]).toEqual([4, 1, 0]);
});

it('an empty table makes an empty herd', () => {
  const { feet, occasions, horses, intervals } = herd({
    feet: { horse_id: { values: [] }, date: { values: [] }, limb: { values: [] } },
  });
  expect([feet.rows, occasions.rows, horses.rows, intervals.rows]).toEqual([0, 0, 0, 0]);
});

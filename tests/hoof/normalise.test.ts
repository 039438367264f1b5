import { describe, expect, it } from 'vitest';
import { HerdError } from '../../lib/hoof/herdError.ts';
import { normalise } from '../../lib/hoof/normalise.ts';
import { TextColumn } from '../../lib/sheet/column.ts';
import { columnsOf } from './feet.ts';

const foot = { horse_id: 'Bella', date: '2026-03-09', limb: 'LF' };

describe('a table made by hand', () => {
  it('comes to day numbers, limb codes and the table’s own words', () => {
    const { columns, problems } = normalise(
      columnsOf([
        { ...foot, limb: 'near fore', moment: 'Pre-trim', shod: 'barefoot' },
        { ...foot, limb: 'off hind', moment: 'after', shod: 'yes' },
      ]),
      'feet',
    );
    expect(problems).toEqual([]);
    expect(columns.date).toMatchObject({ kind: 'date', values: Float64Array.of(20521, 20521) });
    expect(columns.limb.values).toEqual(['LF', 'RH']);
    expect(columns.moment.values).toEqual(['before', 'after']);
    expect(columns.shod).toMatchObject({ kind: 'boolean', values: Float64Array.of(0, 1) });
  });

  it('may call horses by numbers and give dates as day numbers', () => {
    const { columns } = normalise(columnsOf([{ ...foot, horse_id: 7, date: 20521 }]), 'feet');
    expect(columns.horse_id.values).toEqual(['7']);
    expect(columns.date.values).toEqual(Float64Array.of(20521));
  });

  it('may give a measured column in another unit', () => {
    const columns = {
      ...columnsOf([foot]),
      toe_length_mm: { unit: '[in_i]', values: Float64Array.of(3.25), error: Float64Array.of(0.1) },
    };
    expect(normalise(columns, 'feet').columns.toe_length_mm).toEqual({
      kind: 'number',
      unit: 'mm',
      values: Float64Array.of(3.25 * 25.4),
      error: Float64Array.of(0.1 * 25.4),
    });
  });

  it('shares arrays that needed no change', () => {
    const columns = { ...columnsOf([foot]), toe_angle_deg: { unit: 'deg', values: Float64Array.of(52) } };
    expect(normalise(columns, 'feet').columns.toe_angle_deg.values).toBe(columns.toe_angle_deg.values);
  });

  it('keeps columns that nobody knows, whatever their names', () => {
    const columns = { ...columnsOf([foot]), ['__proto__']: { values: ['x'] }, constructor: { values: ['y'] } };
    const { columns: clean } = normalise(columns, 'feet');
    expect(Object.keys(clean)).toEqual(expect.arrayContaining(['__proto__', 'constructor']));
    expect(Object.getOwnPropertyDescriptor(clean, '__proto__')?.value.values).toEqual(['x']);
  });
});

describe('a cell that can’t be used', () => {
  it('is missing, and a problem that names it as it stands', () => {
    const { columns, problems } = normalise(
      columnsOf([
        foot,
        {
          ...foot,
          date: '2026-02-30',
          limb: 'left',
          moment: 'soon',
          shod: 'maybe',
          toe_angle_deg: 520,
          toe_length_mm: 'long',
        },
      ]),
      'feet',
      'feet.csv',
    );
    for (const name of ['date', 'shod', 'toe_angle_deg', 'toe_length_mm'])
      expect((columns[name].values as Float64Array)[1]).toBeNaN();
    expect(columns.limb.values[1]).toBe('');
    expect(columns.moment.values[1]).toBe('');
    expect(problems.map(({ code, file, row, column, value }) => [code, file, row, column, value])).toEqual([
      ['not-a-date', 'feet.csv', 3, 'date', '2026-02-30'],
      ['not-a-word', 'feet.csv', 3, 'limb', 'left'],
      ['not-a-word', 'feet.csv', 3, 'moment', 'soon'],
      ['not-a-word', 'feet.csv', 3, 'shod', 'maybe'],
      ['beyond-anatomy', 'feet.csv', 3, 'toe_angle_deg', '520'],
      ['not-a-number', 'feet.csv', 3, 'toe_length_mm', 'long'],
    ]);
  });

  it('is judged after its unit is settled', () => {
    const columns = { ...columnsOf([foot]), toe_length_mm: { unit: 'cm', values: Float64Array.of(85) } };
    const { columns: clean, problems } = normalise(columns, 'feet');
    expect(problems).toMatchObject([{ code: 'beyond-anatomy', value: '85 cm', expected: '15 to 400 mm' }]);
    expect(clean.toe_length_mm.values[0]).toBeNaN();
  });

  it('leaves the arrays that came in as they were', () => {
    const columns = { ...columnsOf([foot]), toe_angle_deg: { unit: 'deg', values: Float64Array.of(520) } };
    normalise(columns, 'feet');
    expect(columns.toe_angle_deg.values[0]).toBe(520);
  });
});

describe('a cell without anything in it', () => {
  it.each(['', ' '])('(“%s”) is missing in every column, and a problem only where nothing goes without it', (blank) => {
    const { columns, problems } = normalise(
      {
        ...{ horse_id: { values: [blank] }, date: { values: [blank] }, limb: { values: [blank] } },
        ...{ moment: { values: [blank] }, repeat: { values: [blank] }, shod: { values: [blank] } },
        ...{ observer: { values: [blank] }, heel_length_mm: { values: [blank] } },
      },
      'feet',
    );
    for (const name of ['date', 'repeat', 'shod', 'heel_length_mm'])
      expect(columns[name].values, name).toEqual(Float64Array.of(Number.NaN));
    for (const name of ['horse_id', 'limb', 'moment', 'observer']) expect(columns[name].values, name).toEqual(['']);
    expect(
      problems.map(({ code, file, row, column, value, expected }) => [code, file, row, column, value, expected]),
    ).toEqual([
      ['no-key', 'feet', 2, 'horse_id', '', 'a horse'],
      ['no-key', 'feet', 2, 'date', '', 'a date'],
      ['no-key', 'feet', 2, 'limb', '', 'a limb'],
    ]);
  });

  it('of numbers is missing too', () => {
    const nothing = { values: Float64Array.of(Number.NaN) };
    const { columns, problems } = normalise(
      { horse_id: nothing, date: nothing, limb: nothing, shod: nothing, toe_angle_deg: nothing },
      'feet',
    );
    expect([columns.horse_id.values, columns.limb.values]).toEqual([[''], ['']]);
    for (const name of ['date', 'shod', 'toe_angle_deg'])
      expect(columns[name].values, name).toEqual(Float64Array.of(Number.NaN));
    expect(problems.map(({ code, column }) => `${code} ${column}`)).toEqual([
      'no-key horse_id',
      'no-key date',
      'no-key limb',
    ]);
  });

  it('is no problem in visits where it is the limb', () => {
    const visits = { horse_id: { values: ['Bella'] }, date: { values: ['2026-03-09'] }, limb: { values: [''] } };
    expect(normalise(visits, 'visits').problems).toEqual([]);
  });
});

describe('words', () => {
  it('that mean the same become one', () => {
    const moment = TextColumn.from(['pre', 'Before', 'after', 'soon', 'before', '', ' ']);
    const { moment: clean } = normalise({ ...columnsOf(Array(7).fill(foot)), moment }, 'feet').columns;
    expect(clean).toMatchObject({ levels: ['before', 'after'], codes: Int32Array.of(0, 0, 1, -1, 0, -1, -1) });
  });

  it('that need no change are the column that came in', () => {
    const columns = {
      ...columnsOf([foot, foot]),
      observer: TextColumn.from(['Ida', '']),
      moment: TextColumn.from(['before', '']),
    };
    const clean = normalise(columns, 'feet').columns;
    expect(clean.observer).toBe(columns.observer);
    expect(clean.moment).toBe(columns.moment);
  });

  it('lose the blanks round them', () => {
    const { columns } = normalise(
      {
        ...columnsOf([foot]),
        observer: { values: [' Ida '] },
        date: { values: [' 2026-03-09 '] },
        repeat: { values: [' 2 '] },
      },
      'feet',
    );
    expect(columns.observer.values).toEqual(['Ida']);
    expect(columns.date.values).toEqual(Float64Array.of(20521));
    expect(columns.repeat).toMatchObject({ kind: 'number', values: Float64Array.of(2) });
  });
});

describe('numbers in place of words', () => {
  it('are days where they are whole', () => {
    const { columns, problems } = normalise(
      { ...columnsOf([foot]), date: { values: Float64Array.of(20521.5) } },
      'feet',
    );
    expect(columns.date.values).toEqual(Float64Array.of(Number.NaN));
    expect(problems).toMatchObject([
      { code: 'not-a-date', column: 'date', value: '20521.5', expected: 'whole days since 1970-01-01' },
    ]);
  });

  it('are yes and no where they are 1 and 0', () => {
    const { columns, problems } = normalise(
      { ...columnsOf([foot, foot, foot]), shod: { values: Float64Array.of(1, 0, 2) } },
      'feet',
    );
    expect(columns.shod).toEqual({ kind: 'boolean', unit: '1', values: Float64Array.of(1, 0, Number.NaN) });
    expect(problems).toMatchObject([{ code: 'not-a-word', row: 4, column: 'shod', value: '2', expected: 'yes or no' }]);
  });
});

describe('a measurement', () => {
  const angles = (...values: number[]) => {
    const rows = columnsOf(values.map(() => foot));
    return normalise({ ...rows, toe_angle_deg: { unit: 'deg', values: Float64Array.from(values) } }, 'feet');
  };

  it('on the last value that a foot can have is kept', () => {
    const { columns, problems } = angles(15, 110);
    expect([columns.toe_angle_deg.values, problems]).toEqual([Float64Array.of(15, 110), []]);
  });

  it('beyond it on either side is not', () => {
    const { columns, problems } = angles(14.9, 50, 110.1, Number.NaN);
    expect(columns.toe_angle_deg.values).toEqual(Float64Array.of(Number.NaN, 50, Number.NaN, Number.NaN));
    expect(problems.map(({ row, value, expected }) => [row, value, expected])).toEqual([
      [2, '14.9', '15 to 110 deg'],
      [4, '110.1', '15 to 110 deg'],
    ]);
  });

  it('that stands as text is a number, in its own unit', () => {
    const inches = { ...columnsOf([foot, foot]), toe_length_mm: { unit: '[in_i]', values: ['3.25', 'long'] } };
    const { columns, problems } = normalise(inches, 'feet');
    expect(columns.toe_length_mm).toMatchObject({ unit: 'mm', values: Float64Array.of(3.25 * 25.4, Number.NaN) });
    expect(problems).toMatchObject([{ code: 'not-a-number', row: 3, value: 'long', expected: 'a number' }]);
  });

  it('without a unit, or as a pure number, is in the column’s own, with its error', () => {
    for (const unit of [undefined, '1', 'mm']) {
      const toe_length_mm = { unit, values: Float64Array.of(85), error: Float64Array.of(2) };
      expect(normalise({ ...columnsOf([foot]), toe_length_mm }, 'feet').columns.toe_length_mm).toEqual({
        ...{ kind: 'number', unit: 'mm', values: Float64Array.of(85), error: Float64Array.of(2) },
      });
    }
  });
});

it('what a problem expects is said in words', () => {
  const { problems } = normalise(
    columnsOf([{ ...foot, date: 'soon', limb: 'left', moment: 'later', shod: 'maybe', toe_angle_deg: 520 }]),
    'feet',
  );
  const remedy = 'Correct the cell; until then it counts as missing';
  expect(problems.map(({ column, expected, remedy }) => [column, expected, remedy])).toEqual([
    ['date', 'a date such as 2026-03-09', remedy],
    ['limb', 'LF, RF, LH or RH, or words such as near fore', remedy],
    ['moment', 'before, after, between', remedy],
    ['shod', 'yes or no', remedy],
    ['toe_angle_deg', '15 to 110 deg', 'Check it against the foot; until then it is left out'],
  ]);
});

describe('a table of no use', () => {
  it('says which column is missing and what is there', () => {
    expect(() => normalise(columnsOf([{ horse_id: 'Bella', limb: 'LF' }]), 'feet', 'feet.csv')).toThrow(
      /feet\.csv has no column date, only horse_id, limb; expected one named date/,
    );
    expect(() => normalise(columnsOf([{ farrier: 'M. Alder' }]), 'visits')).toThrow(HerdError);
    expect(() => normalise({}, 'feet')).toThrow(/^feet has no column horse_id and no other/);
  });

  it('says which unit doesn’t fit', () => {
    const columns = { ...columnsOf([foot]), toe_length_mm: { unit: 'deg', values: Float64Array.of(85) } };
    expect(() => normalise(columns, 'feet')).toThrow(/toe_length_mm of feet is in deg; expected mm/);
  });
});

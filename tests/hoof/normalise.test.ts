import { describe, expect, it } from 'vitest';
import { HerdError } from '../../lib/hoof/herdError.ts';
import { normalise } from '../../lib/hoof/normalise.ts';
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

describe('a table of no use', () => {
  it('says which column is missing and what is there', () => {
    expect(() => normalise(columnsOf([{ horse_id: 'Bella', limb: 'LF' }]), 'feet', 'feet.csv')).toThrow(
      /feet\.csv has no column date, only horse_id, limb; expected one named date/,
    );
    expect(() => normalise(columnsOf([{ farrier: 'M. Alder' }]), 'visits')).toThrow(HerdError);
  });

  it('says which unit doesn’t fit', () => {
    const columns = { ...columnsOf([foot]), toe_length_mm: { unit: 'deg', values: Float64Array.of(85) } };
    expect(() => normalise(columns, 'feet')).toThrow(/toe_length_mm of feet is in deg; expected mm/);
  });
});

import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { HerdError } from '../../lib/hoof/herdError.ts';
import { builtInRanges } from '../../lib/hoof/ranges.ts';
import { type Cells, columnsOf, errorsOf, numbers, texts } from './feet.ts';

const foot: Cells = { horse_id: 'Bella', date: '2026-03-09', limb: 'LF' };
const feet = columnsOf([foot]);

describe('a herd’s settings', () => {
  it.each([0, 1, -0.5, 57.5, Number.NaN])('refuse a share of weight in front of %d', (shareInFront) => {
    expect(() => herd({ feet }, { shareInFront })).toThrow(HerdError);
    expect(() => herd({ feet }, { shareInFront })).toThrow(/^A share of weight in front of .* Write 0\.575 for 57\.5/);
  });

  it.each([0, -1, Number.POSITIVE_INFINITY, Number.NaN])('refuse a weight divisor of %d', (weightDivisor) => {
    expect(() => herd({ feet }, { weightDivisor })).toThrow(
      /^A weight divisor of .*; expected a number of cm³\/kg above 0\. The usual one is 11900$/,
    );
  });

  it('are 57.5 percent in front and the built-in ranges where nothing else is said', () => {
    const { feet: sheet, horses, ranges } = herd({ feet });
    expect(numbers(sheet, 'share_in_front')).toEqual([0.575]);
    // Every value of 0.55 to 0.60 as likely.
    expect(errorsOf(sheet, 'share_in_front')).toEqual([0.05 / Math.sqrt(12)]);
    expect(numbers(horses, 'weight_divisor')).toEqual([11900]);
    expect(ranges).toBe(builtInRanges);
    const own = new Map();
    expect(herd({ feet }, { ranges: own }).ranges).toBe(own);
  });
});

describe('a herd’s tables', () => {
  it('are made once, when first asked for', () => {
    const made = herd({ feet });
    for (const name of ['feet', 'occasions', 'horses', 'intervals'] as const) expect(made[name]).toBe(made[name]);
  });

  it('know columns by the titles of their rows, and the user’s own by their names', () => {
    const { feet: sheet } = herd({ feet: columnsOf([{ ...foot, mood: 'calm', bruises: 2 }]) });
    const titles = ['horse_id', 'end', 'toe_angle_deg', 'mood', 'bruises'].map((name) => sheet.describe(name).title);
    expect(titles).toEqual(['Horse', 'End', 'Toe angle', 'mood', 'bruises']);
    expect([texts(sheet, 'mood'), numbers(sheet, 'bruises')]).toEqual([['calm'], [2]]);
  });

  it('keep what feet say of a visit or a horse where no table says more', () => {
    const said = columnsOf([{ ...foot, moment: 'after', farrier: 'M. Alder', build: 'pony' }]);
    const { feet: sheet, recomputed } = herd({ feet: said });
    expect([texts(sheet, 'farrier'), texts(sheet, 'build')]).toEqual([['M. Alder'], ['pony']]);
    expect(recomputed).toEqual([]);
  });

  it('put what the tables of visits and horses say in the place of what feet say', () => {
    const said = columnsOf([{ ...foot, moment: 'after', farrier: 'M. Alder', build: 'pony', birth_year: 2001 }]);
    const { feet: sheet, recomputed } = herd({
      feet: said,
      horses: columnsOf([{ horse_id: 'Bella', build: 'heavy' }]),
      visits: columnsOf([{ horse_id: 'Bella', date: '2026-03-09', farrier: 'J. Birch' }]),
    });
    expect([texts(sheet, 'farrier'), texts(sheet, 'build')]).toEqual([['J. Birch'], ['heavy']]);
    expect(recomputed).toEqual(['farrier', 'build', 'birth_year']);
  });

  it('make computed columns afresh, of the feet and of the horses', () => {
    const written = columnsOf([
      { ...foot, toe_angle_deg: 52, pastern_angle_deg: 54, toe_minus_pastern_deg: 99, end: 'top' },
    ]);
    const horses = columnsOf([{ horse_id: 'Bella', weight_kg: 300, body_weight_kg: 999, occasions_measured: 7 }]);
    const made = herd({ feet: written, horses });
    expect([numbers(made.feet, 'toe_minus_pastern_deg'), texts(made.feet, 'end')]).toEqual([[-2], ['front']]);
    expect([numbers(made.horses, 'body_weight_kg'), numbers(made.horses, 'occasions_measured')]).toEqual([[300], [1]]);
    expect(made.recomputed).toEqual(['toe_minus_pastern_deg', 'end']);
  });

  it('say how large the errors of feet and of horses are', () => {
    const { errors } = herd({
      feet: columnsOf([{ ...foot, toe_angle_deg: 52 }]),
      horses: columnsOf([{ horse_id: 'Bella', weight_kg: 300 }]),
    });
    const known = new Map(errors.map(({ name, value }) => [name, value]));
    expect([known.get('toe_angle_deg'), known.get('weight_kg')]).toEqual([1, 2]);
  });
});

describe('a herd’s problems', () => {
  const tables = {
    feet: columnsOf([
      { ...foot, moment: 'soon', repeat: 1 },
      { ...foot, moment: 'between', repeat: 1 },
    ]),
    horses: columnsOf([{ horse_id: 'Bella', build: 'pony', girth_cm: 9000 }, { horse_id: 'Bella' }]),
    visits: columnsOf([
      { horse_id: 'Bella', date: '2026-03-09', work: 'trim', therapeutic: 'perhaps' },
      { horse_id: 'Bella', date: '2026-03-09' },
    ]),
  };
  const listed = (problems: ReturnType<typeof herd>['problems']) =>
    problems.map(({ file, code, row }) => `${file} ${row} ${code}`);

  it('are those of all tables, by the tables’ names', () => {
    expect(listed(herd(tables).problems)).toEqual([
      'feet 2 not-a-word',
      'feet 3 same-row-twice',
      'horses 2 beyond-anatomy',
      'horses 3 same-row-twice',
      'visits 2 not-a-word',
      'visits 3 same-row-twice',
    ]);
  });

  it('come after those that reading found, by the files’ names, and don’t name a row twice', () => {
    const problems = [{ code: 'no-key', file: 'a.csv', row: 9, column: 'limb', value: '', expected: 'x', remedy: 'y' }];
    const files = { feet: 'a.csv', visits: 'c.csv' };
    expect(listed(herd(tables, { problems, files }).problems)).toEqual([
      'a.csv 9 no-key',
      'a.csv 2 not-a-word',
      'horses 2 beyond-anatomy',
      'c.csv 2 not-a-word',
    ]);
  });

  it('say what to do with a visit that stands twice', () => {
    const twice = herd(tables).problems.at(-1);
    expect(twice).toEqual({
      ...{ code: 'same-row-twice', file: 'visits', row: 3, column: 'date', value: 'Bella' },
      expected: 'one visit a horse and day',
      remedy: 'Merge the two rows; meanwhile the first counts',
    });
  });
});

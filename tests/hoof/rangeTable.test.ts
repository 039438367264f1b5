import { describe, expect, it } from 'vitest';
import type { Range } from '../../lib/hoof/measure.ts';
import { rangesFromColumns, rangesToColumns } from '../../lib/hoof/rangeTable.ts';
import type { Columns } from '../../lib/sheet/column.ts';

const full: Range = {
  ...{ atLeast: -5, atMost: 4, limitsOutside: true, below: 'outside high', above: 'inside high' },
  when: { end: 'hind', build: ['heavy', 'cob'], exceptBuild: ['pony'], shod: false, weightKg: [500, 900] },
  ...{ source: 'dau-2015', firmness: 'from memory' },
  publishedOutside: [
    { outside: 28, of: 58, source: 'dau-2015' },
    { outside: 3, of: 40, source: 'my yard' },
  ],
};
const bare: Range = { source: 'my vet', firmness: 'published' };

describe('a range as a row', () => {
  const columns = () =>
    rangesToColumns(
      new Map([
        ['wall_level_mm', [full, bare]],
        ['my_own', [bare]],
      ]),
    );
  const row = (at: number) => Object.entries(columns()).map(([name, { values }]) => [name, values[at]]);

  it('has every part in a column of its own', () => {
    expect(row(0)).toEqual([
      ['measure', 'wall_level_mm'],
      ['unit', 'mm'],
      ['at_least', -5],
      ['at_most', 4],
      ['limits', 'outside'],
      ['below', 'outside high'],
      ['above', 'inside high'],
      ['end', 'hind'],
      ['build', 'heavy;cob'],
      ['except_build', 'pony'],
      ['shod', 'no'],
      ['weight_from_kg', 500],
      ['weight_to_kg', 900],
      ['source', 'dau-2015'],
      ['firmness', 'from memory'],
      ['published_outside', '28 of 58 dau-2015; 3 of 40 my yard'],
    ]);
    expect([columns().weight_from_kg.unit, columns().weight_to_kg.unit]).toEqual(['kg', 'kg']);
  });

  it('leaves empty what it doesn’t have', () => {
    const said = row(1).filter(([, value]) => value !== '' && !Number.isNaN(value));
    expect(said).toEqual([
      ['measure', 'wall_level_mm'],
      ['unit', 'mm'],
      ['limits', 'inside'],
      ['source', 'my vet'],
      ['firmness', 'published'],
    ]);
    expect(row(2).slice(0, 2)).toEqual([
      ['measure', 'my_own'],
      ['unit', '1'],
    ]);
  });

  it('that holds for shod feet says yes', () => {
    const { shod } = rangesToColumns(new Map([['frog_ratio', [{ ...bare, when: { shod: true } }]]]));
    expect(shod.values).toEqual(['yes']);
  });
});

/** One row or several as text, as a file gives them. */
const read = (...rows: readonly Record<string, string>[]) => {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const columns: Columns = Object.fromEntries(
    names.map((name) => [name, { values: rows.map((row) => row[name] ?? '') }]),
  );
  return rangesFromColumns(columns);
};
const one = (row: Record<string, string>): Range | undefined =>
  read({ measure: 'wall_level_mm', ...row }).ranges.get('wall_level_mm')?.[0];

describe('a row as a range', () => {
  it('has every part of it', () => {
    const row = { at_least: '-5', at_most: '4', limits: 'outside', below: 'outside high', above: ' inside high ' };
    const when = { end: 'hind', build: 'heavy; cob', except_build: 'pony;', shod: 'no' };
    const weights = { weight_from_kg: '500', weight_to_kg: '900' };
    const from = {
      source: 'dau-2015',
      firmness: 'from memory',
      published_outside: '28 of 58 dau-2015; 3 of 40 my yard',
    };
    expect(one({ ...row, ...when, ...weights, ...from })).toEqual(full);
  });

  it('has no more parts than were written', () => {
    expect(one({})).toEqual({ source: 'your own range file', firmness: 'common practice, no source' });
  });

  it('with the same limit twice is one value', () => {
    expect(one({ at_least: '3', at_most: '3' })).toMatchObject({ atLeast: 3, atMost: 3 });
  });

  it.each([
    ['yes', true],
    ['1', true],
    ['no', false],
    ['0', false],
    ['perhaps', undefined],
  ])('for shod %s', (shod, expected) => {
    expect(one({ shod })?.when?.shod).toBe(expected);
  });

  it('may hold for one end, or from a weight, or up to one', () => {
    expect(one({ end: 'front' })?.when).toEqual({ end: 'front' });
    expect(one({ end: 'middle' })?.when).toBeUndefined();
    expect(one({ weight_from_kg: '500' })?.when).toEqual({ weightKg: [500, Infinity] });
    expect(one({ weight_to_kg: '300' })?.when).toEqual({ weightKg: [0, 300] });
  });

  it('is as firm as a word for that says, else common practice', () => {
    const firmness = ['published', 'from memory', 'common practice, no source', 'certain'].map(
      (words) => one({ firmness: words })?.firmness,
    );
    expect(firmness).toEqual(['published', 'from memory', 'common practice, no source', 'common practice, no source']);
  });

  it('counts published feet only where both numbers and the source stand there', () => {
    expect(one({ published_outside: 'many of 58 dau-2015' })?.publishedOutside).toBeUndefined();
    expect(one({ published_outside: '12 of 158 dau-2015 ; ' })?.publishedOutside).toEqual([
      { outside: 12, of: 158, source: 'dau-2015' },
    ]);
  });

  it('has both its limits converted where the unit is another', () => {
    expect(one({ unit: 'cm', at_least: '-0.5', at_most: '0.25' })).toMatchObject({ atLeast: -5, atMost: 2.5 });
    expect(one({ unit: 'mm', at_least: '-0.5' })).toMatchObject({ atLeast: -0.5 });
  });

  it('stands in order with the others of its measure', () => {
    const { ranges } = read(
      { measure: 'wall_level_mm', at_most: '3' },
      { measure: 'frog_ratio', at_least: '0.6' },
      { measure: 'wall_level_mm', at_most: '5' },
    );
    expect([...ranges].map(([name, list]) => [name, list.map(({ atLeast, atMost }) => atMost ?? atLeast)])).toEqual([
      ['wall_level_mm', [3, 5]],
      ['frog_ratio', [0.6]],
    ]);
  });
});

describe('a row that can’t be used', () => {
  it.each([
    [{ measure: 'Frog' }, 'measure', 'Frog', 'the name of a computed column with ranges, such as frog_ratio'],
    [{ unit: 'deg' }, 'unit', 'deg', 'mm, or a unit that converts to it'],
    [{ unit: 'hands?' }, 'unit', 'hands?', 'mm, or a unit that converts to it'],
    [{ at_most: 'much' }, 'at_most', 'much', 'a number, or nothing for no limit'],
    [{ weight_to_kg: 'heavy' }, 'weight_to_kg', 'heavy', 'a number, or nothing for no limit'],
    [{ at_least: '3', at_most: '2' }, 'at_least', '3', 'no more than at_most'],
  ])('%o is a problem that says what was expected', (row, column, value, expected) => {
    const { ranges, problems } = read({ measure: 'wall_level_mm', ...row });
    expect(ranges.size).toBe(0);
    expect(problems).toEqual([
      {
        ...{ code: 'range-not-understood', file: 'ranges', row: 2, column, value, expected },
        remedy: 'Correct the row; until then this measure goes without the range',
      },
    ]);
  });

  it('shows a number as it was given', () => {
    const { problems } = rangesFromColumns({
      measure: { values: ['frog_ratio', 'frog_ratio'] },
      at_least: { values: Float64Array.of(0.9, 0.6) },
      at_most: { values: Float64Array.of(0.8, Number.NaN) },
    });
    expect(problems.map(({ row, value }) => [row, value])).toEqual([[2, '0.9']]);
  });
});

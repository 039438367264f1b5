import { describe, expect, it } from 'vitest';
import type { Range } from '../../lib/hoof/measure.ts';
import { beyond, builtInRanges, rangeFor } from '../../lib/hoof/ranges.ts';
import { rangesFromColumns, rangesToColumns } from '../../lib/hoof/rangeTable.ts';

const own: Range = { atMost: 5, source: 'turner-balance', firmness: 'published' };

describe('which range holds', () => {
  it('depends on the end of the horse', () => {
    const front: Range = { ...own, when: { end: 'front' } };
    expect(rangeFor([front], { limb: 'RF' })).toBe(front);
    expect(rangeFor([front], { limb: 'RH' })).toBeUndefined();
    expect(rangeFor([front], {})).toBeUndefined();
  });

  it('depends on build, on shoes and on weight, and not on what isn’t known', () => {
    const heavy: Range = { ...own, when: { build: ['heavy'], shod: true, weightKg: [600, 900] } };
    expect(rangeFor([heavy], { build: 'heavy', shod: true, weightKg: 700 })).toBe(heavy);
    for (const foot of [
      { build: 'pony', shod: true, weightKg: 700 },
      { build: 'heavy', shod: false, weightKg: 700 },
      { build: 'heavy', weightKg: 700 },
      { build: 'heavy', shod: true, weightKg: 599 },
      { build: 'heavy', shod: true },
    ])
      expect(rangeFor([heavy], foot)).toBeUndefined();
  });

  it('depends on weight from its first kilogram to its last', () => {
    const light: Range = { ...own, when: { weightKg: [0, 300] } };
    const held = [0, 300, 300.5].map((weightKg) => rangeFor([light], { weightKg }) === light);
    expect(held).toEqual([true, true, false]);
  });

  it('doesn’t depend on shoes where it says nothing of them', () => {
    const hind: Range = { ...own, when: { end: 'hind' } };
    for (const shod of [true, false, undefined]) expect(rangeFor([hind], { limb: 'LH', shod })).toBe(hind);
  });

  it('leaves gaited builds out where they carry longer feet on purpose', () => {
    const [guide] = builtInRanges.get('toe_over_guide_mm')!;
    expect(rangeFor([guide], { build: 'gaited' })).toBeUndefined();
    expect(rangeFor([guide], { build: 'riding' })).toBe(guide);
    expect(rangeFor([guide], {})).toBe(guide);
  });

  it('is the first of several', () => {
    const [a, b]: Range[] = [{ ...own, when: { end: 'hind' } }, own];
    expect(rangeFor([a, b], { limb: 'LH' })).toBe(a);
    expect(rangeFor([a, b], { limb: 'LF' })).toBe(b);
  });
});

it('a value is as far beyond a range as it passes the nearer limit, with a sign', () => {
  const both: Range = { ...own, atLeast: -5 };
  expect([-7, -5, 0, 5, 8].map((value) => beyond(both, value))).toEqual([-2, 0, 0, 0, 3]);
  expect(beyond(both, Number.NaN)).toBeNaN();
  expect([beyond(own, -1e9), beyond({ ...own, atLeast: 5, atMost: undefined }, 1e9)]).toEqual([0, 0]);
  expect([-5, 0, 5].map((value) => Math.sign(beyond({ ...both, limitsOutside: true }, value)))).toEqual([-1, 0, 1]);
});

describe('the table of ranges', () => {
  it('reads back to what was written', () => {
    const { ranges, problems } = rangesFromColumns(rangesToColumns(builtInRanges));
    expect(problems).toEqual([]);
    expect(JSON.parse(JSON.stringify([...ranges]))).toEqual(JSON.parse(JSON.stringify([...builtInRanges])));
  });

  it('takes numbers that stand as text, and converts another unit', () => {
    const { ranges } = rangesFromColumns({
      measure: { values: ['wall_level_mm'] },
      unit: { values: ['cm'] },
      at_most: { values: ['0.4'] },
      above: { values: ['inside high'] },
    });
    expect(ranges.get('wall_level_mm')).toMatchObject([
      { atMost: 4, above: 'inside high', source: 'your own range file', firmness: 'common practice, no source' },
    ]);
    expect([...ranges.keys()]).toEqual(['wall_level_mm']);
  });

  it('reports a row that it can’t use and leaves that one out', () => {
    const { ranges, problems } = rangesFromColumns(
      {
        measure: { values: ['frog_ratio', 'no_such', 'frog_ratio', 'toe_minus_heel_deg', 'wall_level_mm'] },
        unit: { values: ['', '', '', 'mm', ''] },
        at_least: { values: ['0.6', '1', 'much', '', '9'] },
        at_most: { values: ['', '', '', '5', '3'] },
      },
      'my ranges.csv',
    );
    expect([...ranges.keys()]).toEqual(['frog_ratio']);
    expect(problems.map(({ file, row, column, value }) => [file, row, column, value])).toEqual([
      ['my ranges.csv', 3, 'measure', 'no_such'],
      ['my ranges.csv', 4, 'at_least', 'much'],
      ['my ranges.csv', 5, 'unit', 'mm'],
      ['my ranges.csv', 6, 'at_least', '9'],
    ]);
  });

  it('is refused without the names of the measures', () => {
    expect(() => rangesFromColumns({ at_most: { values: ['5'] } })).toThrow(TypeError);
  });
});

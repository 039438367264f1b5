import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextColumn } from '../../../lib/sheet/column.ts';
import { summaries } from '../../../lib/sheet/formula/summaries.ts';
import { Grouped } from '../../../lib/sheet/grouped.ts';
import { groupRows } from '../../../lib/sheet/groups.ts';

const none = Number.NaN;
const byName = new Map(summaries.map((row) => [row.name, row]));

function of(name: string, values: number[], keys?: string[], p = none): number[] {
  const groups = groupRows(keys ? [TextColumn.from(keys)] : [], values.length);
  return [...byName.get(name)!.of(new Grouped(Float64Array.from(values), groups), p)];
}

describe('summaries of groups', () => {
  const values = [3, none, 1, 8, 5, none];
  const keys = ['a', 'a', 'a', 'b', 'a', 'c'];

  test.each([
    ['mean', [3, 8, none]],
    ['median', [3, 8, none]],
    ['sd', [2, none, none]],
    ['min', [1, 8, none]],
    ['max', [5, 8, none]],
    ['sum', [9, 8, none]],
    ['count', [3, 1, 0]],
  ] as const)('%s leaves missing out and is missing where nothing is left', (name, expected) => {
    expect(of(name, values, keys)).toEqual(expected);
  });

  test('quantiles are those of R’s type 7', () => {
    // quantile(c(2, 4, 9, 16), c(0, .1, .25, .5, .9, 1))
    const expected = { 0: 2, 0.1: 2.6, 0.25: 3.5, 0.5: 6.5, 0.9: 13.9, 1: 16 };
    for (const [p, value] of Object.entries(expected))
      expect(of('quantile', [9, 2, 16, 4], undefined, Number(p))[0]).toBeCloseTo(value, 12);
    expect(of('quantile', [7], undefined, 0.3)).toEqual([7]);
  });

  test('the spread of a number far from nought loses no digits', () => {
    expect(of('sd', [1e9 + 4, 1e9 + 7, 1e9 + 13, 1e9 + 16])[0]).toBeCloseTo(Math.sqrt(30), 12);
  });

  test('what overflows is missing', () => {
    expect(of('sum', [1e308, 1e308])).toEqual([none]);
    expect(of('sd', [1e300, -1e300])).toEqual([none]);
  });

  test('of no rows there are no groups', () => {
    for (const { name } of summaries) expect(of(name, [], [], 0.5)).toEqual([]);
  });
});

describe.each(summaries)('$name', (row) => {
  test('does not mind the order of the rows', () => {
    const cells = fc.array(
      fc.tuple(fc.oneof(fc.constant(none), fc.integer({ min: -50, max: 50 })), fc.constantFrom('a', 'b', 'c')),
      { minLength: 1, maxLength: 20 },
    );
    fc.assert(
      fc.property(
        cells.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([one, other]) => {
          const found = [one, other].map((rows) => {
            const keys = rows.map(([, key]) => key);
            const results = of(
              row.name,
              rows.map(([value]) => value),
              keys,
              0.3,
            );
            return Object.fromEntries([...new Set(keys)].map((key, group) => [key, results[group]]));
          });
          for (const key of Object.keys(found[0]))
            if (Number.isNaN(found[0][key])) expect(found[1][key]).toBeNaN();
            else expect(found[1][key]).toBeCloseTo(found[0][key], 10);
        },
      ),
    );
  });

  test('has weights that agree with small changes of each value', () => {
    const distinct = fc.uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(distinct, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (whole, p) => {
        const values = Float64Array.from([...whole, none]);
        const groups = groupRows(
          [TextColumn.from(whole.map((_, at) => (at % 3 ? 'a' : 'b')).concat('a'))],
          values.length,
        );
        const grouped = new Grouped(values, groups);
        const result = row.of(grouped, p);
        const weights = row.weights(grouped, result, p);
        expect(weights[whole.length]).toBe(0);
        whole.forEach((_, at) => {
          const step = 1e-3;
          const shifted = (by: number) =>
            row.of(
              new Grouped(
                values.map((value, other) => (other === at ? value + by : value)),
                groups,
              ),
              p,
            )[groups.codes[at]];
          const slope = (shifted(step) - shifted(-step)) / (2 * step);
          if (!Number.isNaN(slope)) expect(weights[at]).toBeCloseTo(slope, 5);
        });
      }),
    );
  });

  test('of equal values shares out the same weight in all', () => {
    const values = Float64Array.of(4, 4, 4, 4);
    const grouped = new Grouped(values, groupRows([], 4));
    const weights = row.weights(grouped, row.of(grouped, 0.4), 0.4);
    // The spread of equal values can only grow: it has no slope.
    const total = { sum: 4, count: 0, sd: none }[row.name] ?? 1;
    if (Number.isNaN(total)) return expect(weights).toEqual(new Float64Array(4).fill(none));
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(total, 12);
  });

  test('of a missing value weighs nothing, and of one value all or none', () => {
    const grouped = new Grouped(Float64Array.of(none, 4), groupRows([], 2));
    const [missing, one] = row.weights(grouped, row.of(grouped, 0.4), 0.4);
    expect(missing).toBe(0);
    expect(one).toBe({ count: 0, sd: none }[row.name] ?? 1);
  });

  test('says its column, its keys and over what', () => {
    if (typeof row.sql === 'function') {
      expect(row.sql('p', ['k', 'l'])).toMatch(/\bp\b.*OVER \(PARTITION BY k, l\)/);
      expect(row.sql('p', [])).toContain('OVER ()');
    } else expect(row.sql.share(0.5)).toBe(0.5);
    expect(row.words('p', ['k', 'l'], 0.5)).toMatch(/\bp\b.* for each k and l$/);
    expect(row.words('p', [], 0.5)).toContain('over the whole table');
    expect(row.about).not.toMatch(/[.]$/);
  });
});

test('of equal values the first carries the weight of a quantile between them and the next', () => {
  // The 0.75 quantile of 4, 4, 9 lies half way between the second and the third.
  const grouped = new Grouped(Float64Array.of(4, 9, 4), groupRows([], 3));
  const quantile = byName.get('quantile')!;
  expect([...quantile.weights(grouped, quantile.of(grouped, 0.75), 0.75)]).toEqual([0.5, 0.5, 0]);
  expect([...quantile.weights(grouped, quantile.of(grouped, 1), 1)]).toEqual([0, 1, 0]);
});

describe('grouped values', () => {
  test('are sorted within their groups, side by side', () => {
    const grouped = new Grouped(
      Float64Array.of(3, 9, none, 1, 7),
      groupRows([TextColumn.from(['a', 'b', 'a', 'a', 'b'])], 5),
    );
    expect([...grouped.sorted.starts]).toEqual([0, 2, 4]);
    expect([...grouped.sorted.values]).toEqual([1, 3, 7, 9]);
  });

  test('are counted and added up for any number of rows', () => {
    for (let rows = 0; rows < 10; rows++) {
      const values = Float64Array.from({ length: rows }, (_, row) => (row === 2 ? none : row));
      const grouped = new Grouped(values, groupRows([], rows));
      const present = [...values].filter((value) => !Number.isNaN(value));
      expect([...grouped.counts]).toEqual(rows === 0 ? [] : [present.length]);
      expect([...grouped.sums]).toEqual(rows === 0 ? [] : [present.reduce((sum, value) => sum + value, 0)]);
    }
  });
});

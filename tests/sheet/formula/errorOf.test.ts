import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ColumnInput } from '../../../lib/sheet/column.ts';
import { errorOf } from '../../../lib/sheet/formula/errorOf.ts';
import { inline } from '../../../lib/sheet/formula/inline.ts';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { resolve } from '../../../lib/sheet/formula/resolve.ts';
import { values } from '../../../lib/sheet/formula/values.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';
import type { Table } from '../../../lib/sheet/table.ts';
import { relations, smallHerd } from './smallHerd.ts';

function errors(formula: string, table: Table, unit?: string): Float64Array | undefined {
  return errorOf(resolve(parse(formula), table, unit).node, table);
}

function of(formula: string, columns: Record<string, ColumnInput>, unit?: string): number[] {
  return [...errors(formula, plainTable(columns, relations), unit)!];
}

const mm = (values: number[], error?: number[]): ColumnInput => ({
  unit: 'mm',
  values: Float64Array.from(values),
  error: error && Float64Array.from(error),
});

/** Two feet of a pair. */
const pair = {
  horse_id: { values: ['h1', 'h1'] },
  date: { kind: 'date', values: Float64Array.of(20_000, 20_000) },
  limb: { values: ['LF', 'RF'] },
  a: mm([10, 20], [3, 1]),
  b: mm([4, 5], [4, 2]),
} as const satisfies Record<string, ColumnInput>;

/** First-order propagation the long way round: every cell moved a little, one after the other. */
function byMovingCells(formula: string, columns: Record<string, ColumnInput>): Float64Array {
  const node = resolve(parse(formula), plainTable(columns, relations)).node;
  const rows = columns.toe.values.length;
  const sum = new Float64Array(rows);
  for (const [name, { values: given, error, kind }] of Object.entries(columns)) {
    if (error === undefined) continue;
    for (let cell = 0; cell < rows; cell++) {
      if (Number.isNaN(given[cell])) continue;
      const step = 1e-4;
      const [up, down] = [step, -step].map((by) => {
        const moved = (given as Float64Array).slice();
        moved[cell] += by;
        const table = plainTable({ ...columns, [name]: { values: moved, unit: columns[name].unit, kind } }, relations);
        return values([node], table)[0] as Float64Array;
      });
      for (let row = 0; row < rows; row++) sum[row] += (((up[row] - down[row]) / (2 * step)) * error[cell]) ** 2;
    }
  }
  return sum.map(Math.sqrt);
}

const shapes = [
  'toe - heel',
  '-toe * heel',
  'length * length / width',
  'sqrt(length ** 2 + width ** 2)',
  'toe - opposite(toe)',
  'toe - opposite(opposite(toe))',
  'opposite(toe - heel) / previous(toe)',
  '(length - previous(length)) / (date - previous(date))',
  'previous(opposite(length)) - opposite(previous(length)) + length',
  'toe - mean(toe, horse_id)',
  'toe - mean(toe)',
  '(toe - mean(toe)) / sd(toe)',
  '(toe - mean(toe, horse_id)) / sd(toe, limb)',
  'mean(toe, horse_id) - mean(toe, limb)',
  'mean(toe * length, horse_id) / mean(length, horse_id, limb)',
  'toe - median(toe, horse_id)',
  'quantile(length, 0.9, limb) - quantile(length, 0.1, limb)',
  'max(toe, horse_id) - min(toe, horse_id) + toe',
  'sum(length) - length',
  'mean(opposite(toe) - toe, horse_id)',
  'sd(toe - opposite(toe))',
  'toe - mean(opposite(toe), horse_id)',
  'opposite(mean(toe, limb)) - mean(toe, limb)',
  'sd(toe - mean(toe, horse_id))',
  'mean((toe - mean(toe)) / sd(toe), horse_id)',
  'mean(toe - mean(toe, limb), horse_id) + toe',
  'mean(mean(toe - mean(toe), horse_id) * toe, limb)',
  'limb == "LF" || shod ? toe - mean(toe, limb) : heel',
  'atan2(length, width)',
  'least(toe, heel) + greatest(toe, heel, 48)',
  'coalesce(previous(toe), heel)',
  'abs(toe - heel) * sin(toe) / tan(heel)',
  'toe * count(toe, horse_id)',
] as const;

describe('errorOf', () => {
  it('adds independent errors by their squares', () => {
    expect(of('a - b', pair)).toEqual([5, Math.sqrt(5)]);
    expect(of('a + b', pair)).toEqual([5, Math.sqrt(5)]);
  });

  it('counts a cell that is used twice once', () => {
    expect(of('a - a', pair)).toEqual([0, 0]);
    expect(of('a + a', pair)).toEqual([6, 2]);
    expect(of('a * a', pair)).toEqual([2 * 10 * 3, 2 * 20 * 1]);
    expect(of('a - opposite(opposite(a))', pair)).toEqual([0, 0]);
    expect(of('a + opposite(a) - opposite(opposite(a)) - opposite(a)', pair)).toEqual([0, 0]);
  });

  it('counts cells of other rows as independent', () => {
    expect(of('a - opposite(a)', pair)).toEqual([Math.sqrt(10), Math.sqrt(10)]);
  });

  it("counts a cell's own part in its group's mean once", () => {
    expect(of('a - mean(a)', pair)).toEqual([Math.sqrt(2.5), Math.sqrt(2.5)]);
    const tiny = of('a - mean(a)', { a: mm([10, 20], [3e-9, 1e-9]) });
    for (const error of tiny) expect(error * 1e9).toBeCloseTo(Math.sqrt(2.5), 12);
    expect(of('a - mean(a, limb)', pair)).toEqual([0, 0]);
    expect(of('a - opposite(mean(a, limb))', pair)).toEqual([Math.sqrt(10), Math.sqrt(10)]);
    expect(of('mean(a, limb) - opposite(mean(a, limb))', pair)).toEqual([Math.sqrt(10), Math.sqrt(10)]);
  });

  it("counts a cell that stands in two groups in each group's mean", () => {
    expect(of('mean(limb == "LF" ? opposite(a) : a, limb)', pair)).toEqual([1, 1]);
  });

  it('is 0 where errors cancel but for rounding: of two values, standard scores are always the same', () => {
    expect(of('(a - mean(a)) / sd(a)', pair)).toEqual([0, 0]);
  });

  it('is 0 of constants, dates, tests, comparisons and counts', () => {
    for (const formula of ['3.5', 'date - previous(date) + 1', 'date', 'a > 5', 'a > 5 && b > 1', 'count(a, horse_id)'])
      expect(
        of(formula, { ...pair, date: { kind: 'date', values: Float64Array.of(20_000, 20_001) } }),
        formula,
      ).toEqual(formula.startsWith('date -') ? [Number.NaN, Number.NaN] : [0, 0]);
  });

  it('takes the error of a date that has one', () => {
    const day = { kind: 'date', unit: 'd', values: Float64Array.of(1, 2), error: Float64Array.of(3, 4) } as const;
    expect(of('seen - found', { seen: day, found: { ...day } })).toEqual([Math.sqrt(18), Math.sqrt(32)]);
  });

  it('takes the branch of a choice that is taken, and the argument that is least', () => {
    expect(of('limb == "LF" ? a : b', pair)).toEqual([3, 2]);
    expect(of('b > 4 ? a : a * c / b', { ...pair, c: mm([Number.NaN, Number.NaN], [1, 1]) }, 'mm')).toEqual([
      Number.NaN,
      1,
    ]);
    expect(of('least(a, 15)', pair)).toEqual([3, 0]);
    const equal = { a: mm([15, 15], [3, 3]), b: mm([15, 15], [4, 4]) };
    for (const formula of ['least(a, 15)', 'greatest(a, 15)', 'least(a, b)', 'greatest(a, b)'])
      expect(of(formula, equal), formula).toEqual([3, 3]);
  });

  it('is undefined where the formula rests on a column without errors', () => {
    const columns = { ...pair, b: mm([4, 5]) };
    const table = plainTable(columns, relations);
    for (const formula of ['a - b', 'mean(b)', 'a - opposite(b)', 'limb == "LF" ? a : b', 'floor(b)', 'sd(a * b)'])
      expect(errors(formula, table), formula).toBeUndefined();
    for (const formula of [
      'b > 4',
      '!(b > 4)',
      'is_missing(b)',
      'b > 4 ? a : 0',
      'a * count(b)',
      'is_missing(b) ? a : 2 * a',
    ])
      expect(errors(formula, table), formula).toBeDefined();
  });

  it('is missing where the value is, or the error of a cell it rests on', () => {
    const columns = { ...pair, a: mm([10, Number.NaN], [3, 1]), b: mm([4, 5], [Number.NaN, 2]) };
    expect(of('a * 2', columns)).toEqual([6, Number.NaN]);
    expect(of('b * 2', columns)).toEqual([Number.NaN, 4]);
    expect(of('mean(b)', columns)).toEqual([Number.NaN, Number.NaN]);
    expect(of('mean(b, limb)', columns)).toEqual([Number.NaN, 2]);
    expect(of('mean(a)', columns)).toEqual([3, 3]);
    expect(of('opposite(a)', columns)).toEqual([Number.NaN, 3]);
    expect(of('coalesce(a, b)', columns)).toEqual([3, 2]);
    expect(of('limb == "LF" ? a : mean(b)', columns)).toEqual([3, Number.NaN]);
    expect(of('coalesce(opposite(opposite(a)), b)', columns)).toEqual([3, 2]);
  });

  it('of a summary minds no unknown error of a cell that does not count in it', () => {
    const columns = {
      side: { values: ['left', 'right'] },
      a: mm([10, 20], [3, NaN]),
      b: mm([4, 5], [NaN, 2]),
    };
    expect(of('mean(side == "left" ? a : b)', columns)[0]).toBeCloseTo(Math.hypot(3, 2) / 2, 12);
    expect(of('mean(side == "left" ? a : a + b)', columns)).toEqual([NaN, NaN]);
    expect(of('mean(side == "left" ? mean(a, side) : mean(b, side))', columns)[0]).toBeCloseTo(
      Math.hypot(3, 2) / 2,
      12,
    );
  });

  it('rests on the order as it was observed: only the cells in the middle count in a median', () => {
    const columns = { a: mm([9, 5, 7, 30], [8, 3, 4, Number.NaN]) };
    expect(of('median(a)', columns)[0]).toBeCloseTo(Math.hypot(8, 4) / 2, 14);
    expect(of('min(a)', columns)[0]).toBe(3);
    expect(of('max(a)', columns)[0]).toBeNaN();
  });

  it('keeps the error of a size at 0, and knows none where there is no slope', () => {
    const columns = { a: mm([5, 5], [3, 3]), b: mm([5, 5], [4, 4]) };
    expect(of('abs(a - b)', columns)).toEqual([5, 5]);
    expect(of('sqrt((a - b) ** 2)', columns)).toEqual([Number.NaN, Number.NaN]);
    expect(of('hypot(a - b, 0)', columns)).toEqual([Number.NaN, Number.NaN]);
    expect(of('sd(a)', columns)).toEqual([Number.NaN, Number.NaN]);
    expect(of('sqrt(x)', { x: { values: Float64Array.of(0), error: Float64Array.of(1) } })).toEqual([Number.NaN]);
  });

  it('comes in the unit asked for', () => {
    expect(of('a - b', pair, 'cm')).toEqual([0.5, Math.sqrt(5) / 10]);
    expect(of('a / quantity(1, "cm")', pair)[0]).toBeCloseTo(0.3, 14);
    expect(of('atan2(a, b)', pair, 'deg')[0]).toBeCloseTo(((Math.hypot(10 * 4, 4 * 3) / 116) * 180) / Math.PI, 12);
  });

  it('sees through computed columns: what they share counts once', () => {
    const table = plainTable(pair, relations);
    const formulas: Record<string, string> = { sum: 'a + b', gap: 'a - b' };
    const scope = {
      ...table,
      names: [...table.names, 'sum', 'gap'],
      column: (name: string) => table.column(name in formulas ? 'a' : name),
    };
    const formulaOf = (name: string) => (name in formulas ? resolve(parse(formulas[name]), scope).node : undefined);
    const node = inline(resolve(parse('sum + gap'), scope).node, formulaOf);
    expect([...errorOf(node, table)!]).toEqual([6, 2]);
  });

  it('of a herd-wide mean over 20,000 rows is the written-out sum', () => {
    const rows = 20_000;
    const error = Float64Array.from({ length: rows }, (_, row) => 1 + (row % 7));
    const x = { values: Float64Array.from({ length: rows }, (_, row) => row % 101), error };
    const all = error.reduce((sum, one) => sum + one * one, 0);
    errorOf(resolve(parse('x - mean(x)'), plainTable({ x })).node, plainTable({ x }))!.forEach((got, row) => {
      const own = error[row] ** 2;
      const wanted = Math.sqrt(own * (1 - 1 / rows) ** 2 + (all - own) / rows ** 2);
      expect(Math.abs(got - wanted)).toBeLessThan(1e-12 * wanted);
    });
  });

  it('of a formula over single rows is the same in the ten-thousandth row as in the first', () => {
    const rows = 10_000;
    const error = Float64Array.from({ length: rows }, (_, row) => 1 + (row % 7));
    const x = { values: Float64Array.from({ length: rows }, (_, row) => row % 101), error };
    const side = { values: Array.from({ length: rows }, (_, row) => (row % 3 === 0 ? 'left' : 'right')) };
    const found = of('side == "left" ? 2 * x : 3 * x', { x, side });
    expect(found).toEqual([...error].map((one, row) => (row % 3 === 0 ? 2 : 3) * one));
  });

  it('takes as long as the columns are many, not as the ways through them', () => {
    const table = plainTable(pair);
    const formulaOf = (name: string) => {
      const level = Number(name.slice(1));
      return name === 'a' ? undefined : parse(level === 1 ? 'a + a' : `c${level - 1} + c${level - 1}`);
    };
    expect([...errorOf(inline(parse('c60'), formulaOf), table)!]).toEqual([3 * 2 ** 60, 2 ** 60]);
  });

  it.each(shapes)('of %s is what moving every cell a little gives', (formula) => {
    for (const gaps of [0, 0.2]) {
      const columns = smallHerd({ seed: 7, gaps });
      const table = plainTable(columns, relations);
      const got = errors(formula, table)!;
      const wanted = byMovingCells(formula, columns);
      const [value] = values([resolve(parse(formula), table).node], table) as Float64Array[];
      got.forEach((error, row) => {
        if (Number.isNaN(value[row])) expect(error).toBeNaN();
        else expect(Math.abs(error - wanted[row]), `row ${row}`).toBeLessThan(1e-6 * (1 + wanted[row]));
      });
    }
  });

  it.each([
    'mean(toe - mean(toe), horse_id)',
    'mean((toe - mean(toe)) / sd(toe), horse_id) * toe',
    'mean(toe - mean(toe), horse_id) * mean(heel * toe, limb)',
    'mean(mean(toe - 2 * mean(toe), horse_id) * heel, limb) / heel',
    'mean(toe - mean(toe), horse_id) - mean(heel + mean(heel) + mean(toe), horse_id)',
    'toe - opposite(mean(toe - mean(heel), horse_id))',
  ])('of %s too, whose groups hold more cells than are written out', (formula) => {
    // 18 groups with the whole herd of 72 feet in each.
    const columns = smallHerd({ seed: 3, horses: 18, visits: 1 });
    const got = errors(formula, plainTable(columns, relations))!;
    const wanted = byMovingCells(formula, columns);
    got.forEach((error, row) => {
      expect(Math.abs(error - wanted[row]), `row ${row}`).toBeLessThan(1e-6 * (1 + wanted[row]));
    });
  });

  const formulas = fc.constantFrom(...shapes);
  const table = plainTable(smallHerd({ seed: 11, gaps: 0.1 }), relations);

  it('of k times a formula is the size of k times its error', () => {
    fc.assert(
      fc.property(formulas, fc.integer({ min: -8000, max: 8000 }), (formula, eighths) => {
        const k = eighths / 8;
        const one = errors(formula, table)!;
        errors(`(${k}) * (${formula})`, table)!.forEach((error, row) => {
          if (Number.isNaN(one[row])) expect(error).toBeNaN();
          else
            expect(Math.abs(error - Math.abs(k) * one[row])).toBeLessThanOrEqual(1e-9 * Math.abs(k) * (1 + one[row]));
        });
      }),
      { numRuns: 60, seed: 5 },
    );
  });

  it('of a formula less itself is 0', () => {
    for (const formula of shapes)
      errors(`(${formula}) - (${formula})`, table)!.forEach((error) => {
        expect(Number.isNaN(error) || error === 0, formula).toBe(true);
      });
  });

  it('does not change with the order of rows', () => {
    const columns = smallHerd({ seed: 11 });
    const turned = Object.fromEntries(
      Object.entries(columns).map(([name, { values, error, ...rest }]) => [
        name,
        { ...rest, values: values.slice().reverse(), error: error?.slice().reverse() },
      ]),
    );
    for (const formula of shapes) {
      const forth = errors(formula, plainTable(columns, relations))!;
      const back = errors(formula, plainTable(turned, relations))!.reverse();
      forth.forEach((error, row) => {
        if (!Number.isNaN(error)) expect(back[row], formula).toBeCloseTo(error, 9);
      });
    }
  });
});

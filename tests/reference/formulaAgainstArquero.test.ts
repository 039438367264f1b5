// The same expressions by Arquero's derive and rollup (npm arquero), on columns without missing values.
import { table as arquero, op } from 'arquero';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from '../../lib/sheet/formula/parse.ts';
import { resolve } from '../../lib/sheet/formula/resolve.ts';
import { values } from '../../lib/sheet/formula/values.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';

interface Row {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly limb: string;
}

const rowWise: readonly (readonly [string, (d: Row) => unknown])[] = [
  ['a + b * c - 2', (d) => d.a + d.b * d.c - 2],
  ['(a - b) / (a + b)', (d) => (d.a - d.b) / (d.a + d.b)],
  ['a % b', (d) => d.a % d.b],
  ['a ** 2 + b ** 3', (d) => d.a ** 2 + d.b ** 3],
  ['sqrt(abs(a * b))', (d) => op.sqrt(op.abs(d.a * d.b))],
  ['atan2(a, b)', (d) => op.degrees(op.atan2(d.a, d.b))],
  ['sin(a) * cos(b) + tan(c)', (d) => op.sin(d.a) * op.cos(d.b) + op.tan(d.c)],
  ['exp(a / 100) - log(abs(b) + 1)', (d) => op.exp(d.a / 100) - op.log(op.abs(d.b) + 1)],
  ['floor(a) + ceil(b)', (d) => op.floor(d.a) + op.ceil(d.b)],
  ['sign(a - b)', (d) => op.sign(d.a - d.b)],
  ['least(a, b, c) + greatest(a, b, c)', (d) => op.least(d.a, d.b, d.c) + op.greatest(d.a, d.b, d.c)],
  ['a > b && b > c || a == c ? a : -b', (d) => ((d.a > d.b && d.b > d.c) || d.a === d.c ? d.a : -d.b)],
  ["limb == 'LF' ? a : b", (d) => (d.limb === 'LF' ? d.a : d.b)],
  ['a <= b', (d) => d.a <= d.b],
];

const summaries: readonly (readonly [string, (column: string) => unknown])[] = [
  ['mean(a, limb)', op.mean],
  ['median(a, limb)', op.median],
  ['sd(a, limb)', op.stdev],
  ['min(a, limb)', op.min],
  ['max(a, limb)', op.max],
  ['sum(a, limb)', op.sum],
  ['quantile(a, 0.3, limb)', (column) => op.quantile(column, 0.3)],
];

// Ours reads minus nought as nought, which only atan2 could tell apart.
const number = fc.double({ min: -200, max: 200, noNaN: true }).map((value) => value + 0);
const rows = fc.array(fc.record({ a: number, b: number, c: number, limb: fc.constantFrom('LF', 'RF', 'LH') }), {
  minLength: 1,
  maxLength: 30,
});

function columns(all: readonly Row[]) {
  const one = (name: 'a' | 'b' | 'c') => Float64Array.from(all, (row) => row[name]);
  return { a: one('a'), b: one('b'), c: one('c'), limb: all.map(({ limb }) => limb) };
}

function ours(formula: string, all: readonly Row[]): number[] {
  const { a, b, c, limb } = columns(all);
  const table = plainTable({ a: { values: a }, b: { values: b }, c: { values: c }, limb: { values: limb } });
  return [...(values([resolve(parse(formula), table).node], table)[0] as Float64Array)];
}

function expectSame(found: number[], expected: unknown[]): void {
  found.forEach((value, row) => {
    const other = Number(expected[row] ?? Number.NaN);
    // Where Arquero goes to infinity, ours is missing.
    if (!Number.isFinite(other)) expect(value).toBeNaN();
    else expect(Math.abs(value - other)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(other)));
  });
}

describe('the same as by Arquero', () => {
  test.each(rowWise)('%s', (formula, derived) => {
    fc.assert(
      fc.property(rows, (all) => {
        expectSame(ours(formula, all), [
          ...arquero(columns(all))
            .derive({ found: derived as never })
            .array('found'),
        ]);
      }),
      { numRuns: 50 },
    );
  });

  test.each(summaries)('%s', (formula, summary) => {
    fc.assert(
      fc.property(rows, (all) => {
        const byLimb = arquero(columns(all))
          .groupby('limb')
          .derive({ found: summary('a') as never });
        expectSame(ours(formula, all), [...byLimb.array('found')]);
      }),
      { numRuns: 50 },
    );
  });
});

// Standard errors by first-order propagation, against worked examples of the Guide to the Expression of Uncertainty in
// Measurement (JCGM 100:2008; its figures are quoted from memory) and against Monte Carlo trials with fixed seeds.
import { describe, expect, it } from 'vitest';
import type { ColumnInput, NumberColumn } from '../../lib/sheet/column.ts';
import { errorOf } from '../../lib/sheet/formula/errorOf.ts';
import { parse } from '../../lib/sheet/formula/parse.ts';
import { resolve } from '../../lib/sheet/formula/resolve.ts';
import { values } from '../../lib/sheet/formula/values.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import type { Relation } from '../../lib/sheet/relation.ts';
import { randomNumbers, relations, smallHerd } from '../sheet/formula/smallHerd.ts';

/** A value with its standard error, in a table of one row. */
const one = (value: number, error: number, unit = '1'): ColumnInput => ({
  unit,
  values: Float64Array.of(value),
  error: Float64Array.of(error),
});

function both(formula: string, columns: Record<string, ColumnInput>, related: readonly Relation[] = [], unit?: string) {
  const table = plainTable(columns, related);
  const { node } = resolve(parse(formula), table, unit);
  return { value: (values([node], table)[0] as Float64Array)[0], error: errorOf(node, table)![0] };
}

describe('errorOf gives the worked examples of the GUM', () => {
  it('5.1.6, equation (12): of a product of powers, relative errors add by their squares times the powers', () => {
    const columns = { x: one(4, 0.04), y: one(9, 0.27), z: one(2, 0.01) };
    const { value, error } = both('3 * x ** 2 * y ** 0.5 / z ** 3', columns);
    expect(error / value).toBeCloseTo(Math.hypot(2 * 0.01, 0.5 * 0.03, 3 * 0.005), 14);
  });

  it('4.1.1 and 5.1.3: of the power in a resistor that warms up, by its written-out sensitivities', () => {
    const [V, R0, alpha, t, t0] = [12, 150, 0.004, 35, 20];
    const columns = { V: one(V, 0.05), R0: one(R0, 0.2), alpha: one(alpha, 1e-5), t: one(t, 0.3) };
    const warm = 1 + alpha * (t - t0);
    const P = V ** 2 / (R0 * warm);
    const { value, error } = both(`V ** 2 / (R0 * (1 + alpha * (t - ${t0})))`, columns);
    expect(value).toBeCloseTo(P, 14);
    const parts = [(2 * P) / V, -P / R0, (-P * (t - t0)) / warm, (-P * alpha) / warm];
    const errors = [0.05, 0.2, 1e-5, 0.3];
    expect(error).toBeCloseTo(Math.hypot(...parts.map((part, i) => part * errors[i])), 14);
  });

  it('5.2.2: ten resistors compared with one standard share its error, so that their sum has 1 Ω and not 0.32 Ω', () => {
    const parts = ['standard', ...Array.from({ length: 10 }, (_, i) => `R${i}`)];
    const standard: Relation = {
      name: 'standard',
      words: 'the standard’s',
      match: ['bench'],
      swap: { part: Object.fromEntries(parts.slice(1).map((part) => [part, 'standard'])) },
    };
    const columns: Record<string, ColumnInput> = {
      bench: { values: parts.map(() => 'one') },
      part: { values: parts },
      resistance: {
        values: Float64Array.from(parts, (_, i) => (i === 0 ? 1000 : Number.NaN)),
        error: new Float64Array(11).fill(0.1),
      },
      comparison: { values: new Float64Array(11).fill(1), error: new Float64Array(11) },
    };
    const { value, error } = both('sum(comparison * standard(resistance))', columns, [standard]);
    expect(value).toBe(10_000);
    expect(error).toBeCloseTo(1, 12);
    expect(
      both('sum(resistance)', {
        resistance: { values: new Float64Array(10).fill(1000), error: new Float64Array(10).fill(0.1) },
      }).error,
    ).toBeCloseTo(0.32, 2);
  });

  it('H.1: an end gauge of 50 mm has 32 nm, the square root of 1002 nm²', () => {
    // l = ls + d − ls (δα θ + αs δθ): lengths in nm, temperatures as numbers of °C.
    const columns = {
      ls: one(50_000_623, 25, 'nm'),
      d: one(215, 9.7, 'nm'),
      dAlpha: one(0, 0.58e-6),
      theta: one(-0.1, 0.41),
      alpha: one(11.5e-6, 1.2e-6),
      dTheta: one(0, 0.029),
    };
    const { value, error } = both('ls + d - ls * (dAlpha * theta + alpha * dTheta)', columns);
    expect(value).toBe(50_000_838);
    expect(Math.round(error)).toBe(32);
    // The guide adds the rounded parts 25, 9.7, 2.9 and 16.6.
    expect(error ** 2).toBeCloseTo(
      25 ** 2 + 9.7 ** 2 + (50.000623 * 0.1 * 0.58) ** 2 + (50.000623 * 11.5 * 0.029) ** 2,
      6,
    );
    expect(Math.abs(error ** 2 - 1002)).toBeLessThan(5);
  });
});

describe('errorOf gives the spread of Monte Carlo trials', () => {
  const formulas = [
    'toe - heel',
    'toe / heel * length',
    'atan2(length, width)',
    'sqrt(length * width) + abs(length - width)',
    'toe > 50 ? toe * 2 : heel',
    'toe - opposite(toe)',
    '(length - previous(length)) / (date - previous(date))',
    'opposite(toe - heel) - (toe - heel)',
    'toe - mean(toe, horse_id)',
    '(toe - mean(toe)) / sd(toe)',
    '(toe - mean(toe, horse_id)) / sd(toe, limb)',
    'median(length, limb) - min(length, horse_id)',
    'quantile(width, 0.9)',
    'mean(toe / opposite(toe), horse_id) * opposite(heel)',
    'sd(toe - mean(toe, horse_id)) * toe',
    'mean((toe - mean(toe)) / sd(toe), horse_id)',
  ];
  const trials = 4000;
  // The standard deviation of `trials` normal values has a relative standard error of 1 / √(2 (trials − 1)).
  const within = 5 / Math.sqrt(2 * (trials - 1));

  it.each([31, 32])(`over ${trials} trials (seed %i)`, (seed) => {
    // Small errors, so that the order of the cells stays and curves are straight.
    const columns = Object.entries(smallHerd({ seed, horses: 3, visits: 2 })).map(
      ([name, column]) => [name, { ...column, error: column.error?.map((error) => error / 2000) }] as const,
    );
    const table = plainTable(Object.fromEntries(columns), relations);
    const nodes = formulas.map((formula) => resolve(parse(formula), table).node);
    const { normal } = randomNumbers(seed);

    const first = values(nodes, table) as Float64Array[];
    const sums = nodes.map(() => new Float64Array(table.rows));
    const squares = nodes.map(() => new Float64Array(table.rows));
    const measured = columns
      .filter(([, { error }]) => error !== undefined)
      .map(([name]) => [name, table.column(name) as NumberColumn] as const);
    for (let trial = 0; trial < trials; trial++) {
      const drawn = new Map(
        measured.map(([name, column]) => [
          name,
          { ...column, values: column.values.map((value, row) => value + column.error![row] * normal()) },
        ]),
      );
      const moved = values(nodes, {
        ...table,
        column: (name) => drawn.get(name) ?? table.column(name),
      }) as Float64Array[];
      moved.forEach((column, i) => {
        for (let row = 0; row < table.rows; row++) {
          const off = column[row] - first[i][row];
          sums[i][row] += off;
          squares[i][row] += off * off;
        }
      });
    }

    nodes.forEach((node, i) => {
      const errors = errorOf(node, table)!;
      errors.forEach((error, row) => {
        const sd = Math.sqrt((squares[i][row] - sums[i][row] ** 2 / trials) / (trials - 1));
        if (Number.isNaN(first[i][row])) expect(error).toBeNaN();
        else expect(Math.abs(error / sd - 1), `${formulas[i]} in row ${row}: ${error} and ${sd}`).toBeLessThan(within);
      });
    });
  });
});

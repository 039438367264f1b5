import type { ColumnInput, Columns } from '../sheet/column.ts';
import type { LargeShare, Spread } from './largeTable.ts';

/** Spreads as a table: one row a column, limb, moment and month. */
export function spreadColumns(spreads: readonly Spread[]): Columns {
  const text = (of: (one: Spread) => string): ColumnInput => ({ values: spreads.map(of) });
  const numbers = (of: (one: Spread) => number): ColumnInput => ({ values: Float64Array.from(spreads, of) });
  const quantiles = ['q05', 'q25', 'q50', 'q75', 'q95'].map((name, at) => [name, numbers((one) => one.quantiles[at])]);
  return {
    column: text(({ column }) => column),
    limb: text(({ limb }) => limb),
    moment: text(({ moment }) => moment),
    month: text(({ month }) => month),
    count: numbers(({ count }) => count),
    missing: numbers(({ missing }) => missing),
    mean: numbers(({ mean }) => mean),
    sd: numbers(({ sd }) => sd),
    ...Object.fromEntries(quantiles),
  };
}

/** Shares outside ranges as a table: one row a range. */
export function shareColumns(shares: readonly LargeShare[]): Columns {
  const text = (of: (one: LargeShare) => string): ColumnInput => ({ values: shares.map(of) });
  const numbers = (of: (one: LargeShare) => number): ColumnInput => ({ values: Float64Array.from(shares, of) });
  return {
    measure: text(({ measure }) => measure.name),
    unit: text(({ measure }) => measure.unit),
    at_least: numbers(({ range }) => range.atLeast ?? Number.NaN),
    at_most: numbers(({ range }) => range.atMost ?? Number.NaN),
    end: text(({ range }) => range.when?.end ?? ''),
    of: numbers(({ of }) => of),
    outside: numbers(({ outside }) => outside),
    missing: numbers(({ missing }) => missing),
    source: text(({ range }) => range.source),
  };
}

import { describe, expect, it } from 'vitest';
import type { ColumnInput } from '../../../lib/sheet/column.ts';
import { type ComputedFormula, lineage } from '../../../lib/sheet/formula/lineage.ts';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { resolve } from '../../../lib/sheet/formula/resolve.ts';
import { values } from '../../../lib/sheet/formula/values.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';
import { relations } from './smallHerd.ts';

const measured: Record<string, ColumnInput> = {
  horse_id: { values: ['h1', 'h1', 'h1', 'h2'] },
  date: { kind: 'date', values: Float64Array.of(10, 10, 50, 10) },
  limb: { values: ['LF', 'RF', 'LF', 'LF'] },
  toe: { unit: 'deg', values: Float64Array.of(50, 52, 49, Number.NaN), error: Float64Array.of(1, Number.NaN, 2, 1) },
  heel: { unit: 'deg', values: Float64Array.of(45, 44, 43, 42) },
  note: { values: ['bar', '', 'egg', ''] },
};

/** The lineage of one cell in a table with these computed columns, added in order. */
function trace(formulas: Record<string, string>, name: string, row: number, few?: number) {
  const columns = { ...measured };
  const known = new Map<string, ComputedFormula>();
  for (const [column, text] of Object.entries(formulas)) {
    const table = plainTable(columns, relations);
    const { node, unit, kind } = resolve(parse(text), table);
    const [made] = values([node], table);
    columns[column] = made instanceof Float64Array ? { unit, kind, values: made } : { values: made.values };
    known.set(column, { text, node });
  }
  return lineage(name, row, plainTable(columns, relations), (column) => known.get(column), few);
}

describe('lineage', () => {
  it('of a measured cell is the cell itself, with its error where that is known', () => {
    expect(trace({}, 'toe', 0)).toEqual({ column: 'toe', row: 0, value: 50, unit: 'deg', error: 1, from: [] });
    expect(trace({}, 'toe', 1)).toEqual({ column: 'toe', row: 1, value: 52, unit: 'deg', from: [] });
    expect(trace({}, 'limb', 1)).toEqual({ column: 'limb', row: 1, value: 'RF', unit: '1', from: [] });
    expect(trace({}, 'limb', 0).value).toBe('LF');
    expect(trace({}, 'heel', 0)).not.toHaveProperty('error');
  });

  it('names each cell of a formula once, down to what was measured', () => {
    const tree = trace({ gap: 'toe - heel', twice: 'gap + gap * gap / quantity(1, "deg")' }, 'twice', 0);
    expect(tree).toMatchObject({ column: 'twice', value: 30, formula: 'gap + gap * gap / quantity(1, "deg")' });
    expect(tree.from).toHaveLength(1);
    expect(tree.from[0]).toMatchObject({ column: 'gap', row: 0, value: 5, unit: 'deg', formula: 'toe - heel' });
    expect(tree.from[0].from).toEqual([
      { column: 'toe', row: 0, value: 50, unit: 'deg', error: 1, from: [] },
      { column: 'heel', row: 0, value: 45, unit: 'deg', from: [] },
    ]);
  });

  it('looks through functions of a row', () => {
    const { from } = trace({ size: 'abs(toe - heel)' }, 'size', 2);
    expect(from.map(({ column, row, via }) => [column, row, via])).toEqual([
      ['toe', 2, undefined],
      ['heel', 2, undefined],
    ]);
  });

  it('ends where a relation leads to no row, be the cell measured or computed, a number or text', () => {
    const formulas = { gap: 'toe - heel', far: 'opposite(gap)', side: "opposite(limb) == 'RF'" };
    expect(trace(formulas, 'far', 3).from).toEqual([
      { column: 'gap', row: -1, value: Number.NaN, unit: 'deg', formula: 'toe - heel', via: 'opposite', from: [] },
    ]);
    expect(trace(formulas, 'side', 3).from).toEqual([
      { column: 'limb', row: -1, value: '', unit: '1', via: 'opposite', from: [] },
    ]);
  });

  it('says by which relation a cell of another row got in', () => {
    const { from } = trace({ pair: 'toe - opposite(toe)' }, 'pair', 0);
    expect(from).toMatchObject([
      { row: 0, value: 50 },
      { row: 1, value: 52, via: 'opposite' },
    ]);
    expect(from[0]).not.toHaveProperty('via');
    expect(trace({ far: 'opposite(previous(toe) + heel)' }, 'far', 2).from).toEqual([
      { column: 'toe', row: -1, value: Number.NaN, unit: 'deg', via: 'opposite, previous', from: [] },
      { column: 'heel', row: -1, value: Number.NaN, unit: 'deg', via: 'opposite', from: [] },
    ]);
    expect(trace({ back: 'previous(opposite(limb)) == "RF"' }, 'back', 2).from).toMatchObject([
      { column: 'limb', row: 1, value: 'RF', via: 'previous, opposite' },
    ]);
  });

  it('of a summary counts the cells that are there and lists the first few', () => {
    const formulas = { off: 'toe - mean(toe, limb, horse_id)', all: 'quantile(toe, 0.5)' };
    expect(trace(formulas, 'off', 0).from[1]).toEqual({
      column: 'toe',
      row: 0,
      value: 49.5,
      unit: 'deg',
      via: 'mean over limb and horse_id: 2 cells',
      from: [
        { column: 'toe', row: 0, value: 50, unit: 'deg', error: 1, from: [] },
        { column: 'toe', row: 2, value: 49, unit: 'deg', error: 2, from: [] },
      ],
    });
    const [all] = trace(formulas, 'all', 3, 2).from;
    expect(all).toMatchObject({ value: 50, via: 'quantile 0.5 over the whole table: 3 cells' });
    expect(all.from.map(({ value }) => value)).toEqual([50, 52]);
    expect(trace({ n: 'count(limb, horse_id)' }, 'n', 3).from).toMatchObject([
      { column: 'limb', value: 1, unit: '1', via: 'count over horse_id: 1 cell', from: [{ value: 'LF' }] },
    ]);
    expect(trace({ n: 'count(toe)' }, 'n', 3).from).toMatchObject([{ value: 3, unit: '1' }]);
    expect(trace({ n: 'count(note)' }, 'n', 3).from).toMatchObject([
      { value: 2, via: 'count over the whole table: 2 cells', from: [{ value: 'bar' }, { value: 'egg' }] },
    ]);
    expect(trace({ m: 'mean(toe - heel)' }, 'm', 0).from).toMatchObject([
      {
        column: 'toe - heel',
        unit: '',
        from: [{ column: 'toe' }, { column: 'heel' }, { row: 1 }, { row: 1 }, { row: 2 }, { row: 2 }],
      },
    ]);
  });

  it('lists the summary of another row with the way there', () => {
    expect(trace({ o: 'opposite(mean(toe, limb))' }, 'o', 1).from).toMatchObject([
      { row: 0, value: 49.5, via: 'opposite, mean over limb: 2 cells' },
    ]);
    expect(trace({ o: 'opposite(mean(toe, limb))' }, 'o', 3).from).toEqual([
      { column: 'toe', row: -1, value: Number.NaN, unit: 'deg', via: 'opposite, mean over limb: 0 cells', from: [] },
    ]);
  });

  it('of a choice follows the branch that was taken', () => {
    const formulas = { side: 'toe > 49 ? heel : toe - previous(toe)' };
    const names = (row: number) => trace(formulas, 'side', row).from.map(({ column }) => column);
    expect(names(0)).toEqual(['toe', 'heel']);
    expect(names(2)).toEqual(['toe', 'toe']);
    expect(names(3)).toEqual(['toe']);
  });

  it('grows with the columns, not with the ways through them', () => {
    const formulas: Record<string, string> = { c0: 'toe + heel', c1: 'c0 - toe' };
    for (let i = 2; i < 60; i++) formulas[`c${i}`] = `c${i - 1} + c${i - 2}`;
    let node = trace(formulas, 'c59', 0);
    for (let i = 59; i > 1; i--) {
      expect(node.from).toHaveLength(2);
      node = node.from[0];
    }
    expect(node.column).toBe('c1');
  });

  it('refuses a row that is not there', () => {
    expect(() => trace({}, 'toe', 4)).toThrow('There is no row 4: the table has 4 rows, counted from 0');
    expect(() => trace({}, 'toe', -1)).toThrow(RangeError);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import type { ComputedColumn } from '../../lib/sheet/computedColumn.ts';
import type { Sheet } from '../../lib/sheet/sheet.ts';

const rows = 64;

/** By the row, by choice, in a chain, by another row, by a group and over the whole table; one without known errors. */
const formulas = {
  under: 'toe - heel',
  slope: 'toe / heel',
  steep: "limb == 'LF' ? toe * 2 : heel",
  chained: 'under * slope',
  pair: 'toe - opposite(toe)',
  off_horse: 'toe - mean(toe, horse_id)',
  score: '(heel - mean(heel)) / sd(heel)',
  unknown: 'toe - bare',
};
type Name = keyof typeof formulas;
const names = Object.keys(formulas) as Name[];

const measured = {
  horse_id: { values: Array.from({ length: rows }, (_, row) => `h${row >> 4}`) },
  date: { kind: 'date' as const, values: Float64Array.from({ length: rows }, (_, row) => 20000 + ((row >> 2) & 3)) },
  limb: { values: Array.from({ length: rows }, (_, row) => ['LF', 'RF', 'LH', 'RH'][row & 3]) },
  toe: degrees((row) => 45 + ((row * 7) % 15), 1),
  heel: degrees((row) => 40 + ((row * 11) % 13), 1.5),
  bare: { unit: 'deg', values: new Float64Array(rows) },
};

function degrees(value: (row: number) => number, error: number) {
  const values = Float64Array.from({ length: rows }, (_, row) => value(row));
  return { unit: 'deg', values, error: new Float64Array(rows).fill(error) };
}

function sheetOf(columns: Parameters<typeof FootSheet.from>[0]): Sheet {
  const sheet: Sheet = FootSheet.from(columns);
  return sheet.addAll(names.map((name) => ({ name, formula: formulas[name] }))).beginHistory();
}

const errorsOf = (sheet: Sheet, name: string) => (sheet.column(name) as ComputedColumn).error;
const ready = (sheet: Sheet) => names.filter((name) => (sheet.column(name) as ComputedColumn).errors.ready());
/** The same table, computed afresh. */
const afresh = (sheet: Sheet) =>
  sheetOf(Object.fromEntries(Object.keys(measured).map((name) => [name, sheet.column(name)])));

describe('errors of computed columns', () => {
  test('after any edits are what they are afresh, to the bit (law)', () => {
    const edit = fc.record({
      name: fc.constantFrom('toe', 'heel', 'limb'),
      row: fc.nat(rows - 1),
      value: fc.option(fc.integer({ min: 1, max: 60 })),
      ask: fc.subarray(names),
    });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 8 }), fc.boolean(), (edits, undone) => {
        const sheet = sheetOf(measured);
        for (const name of names) errorsOf(sheet, name);
        for (const { name, row, value, ask } of edits) {
          sheet.set(name, row, name !== 'limb' ? value : value === null ? null : ['LF', 'RF', 'LH', 'RH'][value & 3]);
          for (const column of ask) errorsOf(sheet, column);
        }
        if (undone) sheet.undo();
        const fresh = afresh(sheet);
        for (const name of names) expect([name, errorsOf(sheet, name)]).toEqual([name, errorsOf(fresh, name)]);
      }),
      { numRuns: 40 },
    );
  });

  test('are at hand after an edit where its row alone counts or where nothing of theirs has changed', () => {
    const sheet = sheetOf(measured);
    expect(ready(sheet)).toEqual([]);
    for (const name of names) errorsOf(sheet, name);
    expect(ready(sheet)).toEqual(names);
    const before = errorsOf(sheet, 'under');
    sheet.set('toe', 3, 50);
    expect(ready(sheet)).toEqual(['under', 'slope', 'steep', 'chained', 'score', 'unknown']);
    expect(errorsOf(sheet, 'under')).toBe(before);
    sheet.fill(
      'toe',
      Array.from({ length: rows }, (_, row) => row),
      50,
    );
    expect(ready(sheet)).toEqual(['score']);
  });

  test('begin anew with another formula and with other rows', () => {
    const sheet = sheetOf(measured);
    for (const name of names) errorsOf(sheet, name);
    sheet.replace({ name: 'slope', formula: 'heel * 2' });
    expect(errorsOf(sheet, 'slope')).toEqual(new Float64Array(rows).fill(3));
    sheet.removeRows([0]);
    expect(errorsOf(sheet, 'under')).toHaveLength(rows - 1);
  });
});

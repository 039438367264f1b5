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
  return { unit: 'deg', values, error: Float64Array.from({ length: rows }, (_, row) => errorIn(row, error)) };
}

/** No two neighbours are measured equally well. */
function errorIn(row: number, least: number): number {
  return least + (row % 5) / 8;
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

  test('of rows that changed are worked out from their own cells, and of the others stay', () => {
    const sheet = sheetOf(measured);
    const before = Object.fromEntries(names.map((name) => [name, errorsOf(sheet, name)?.slice()]));
    sheet.set('toe', 8, 50).set('heel', 8, 40).set('limb', 5, 'LF').set('toe', 30, null);
    const others = (errors: Float64Array | undefined) => errors?.filter((_, row) => ![5, 8, 30].includes(row));
    for (const name of ['under', 'slope', 'steep', 'chained'] as const)
      expect(others(errorsOf(sheet, name))).toEqual(others(before[name]));
    const [toe, heel] = [errorIn(8, 1), errorIn(8, 1.5)];
    expect(errorsOf(sheet, 'under')![8]).toBeCloseTo(Math.hypot(toe, heel), 12);
    expect(errorsOf(sheet, 'under')![30]).toBeNaN();
    expect(errorsOf(sheet, 'slope')![8]).toBeCloseTo(Math.hypot(toe / 40, (heel * 50) / 40 ** 2), 12);
    expect(before.steep![5]).toBe(errorIn(5, 1.5));
    expect(errorsOf(sheet, 'steep')![5]).toBe(2 * errorIn(5, 1));
    expect(errorsOf(sheet, 'unknown')).toBeUndefined();
  });

  test('begin anew with another formula and with other rows', () => {
    const sheet = sheetOf(measured);
    for (const name of names) errorsOf(sheet, name);
    sheet.replace({ name: 'slope', formula: 'heel * 2' });
    expect(errorsOf(sheet, 'slope')).toEqual(measured.heel.error.map((error) => error * 2));
    sheet.removeRows([0]);
    expect(errorsOf(sheet, 'under')).toHaveLength(rows - 1);
  });
});

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { inventHerd, toColumns } from '../../data/inventHerd.ts';
import { readParquet, writeParquet } from '../../lib/files/columnar/parquet.ts';
import { writeTable } from '../../lib/files/writeTable.ts';
import { usualErrors } from '../../lib/hoof/errors.ts';
import { type HerdTables, herd } from '../../lib/hoof/herd.ts';
import { limbs } from '../../lib/hoof/limbs.ts';
import { partName } from '../../lib/hoof/partName.ts';
import { computeLargeHorses } from '../../lib/large.ts';
import { type Columns, type NumberColumn, TextColumn, toColumn } from '../../lib/sheet/column.ts';
import type { Sheet } from '../../lib/sheet/sheet.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhoof-horses-test-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string) => join(folder, `${name}.parquet`);
const out = { horses: file('out-horses'), intervals: file('out-intervals'), errors: file('out-errors') };
/** Columns of one's own: over the same foot, over one horse, and over all of them. */
const own = [
  { name: 'by_last', formula: 'toe_angle_deg - previous(toe_angle_deg)' },
  { name: 'off_its_mean', formula: 'toe_length_mm - mean(toe_length_mm, horse_id)' },
  { name: 'off_all', formula: 'toe_length_mm - mean(toe_length_mm)' },
  { name: 'twice_off_all', formula: '2 * off_all' },
];

async function written(tables: HerdTables): Promise<{ feet: string; horses?: string; visits?: string }> {
  const files: Record<string, string> = {};
  for (const [name, columns] of Object.entries(tables)) {
    if (columns === undefined) continue;
    files[name] = file(name);
    writeFileSync(files[name], await writeParquet(columns));
  }
  return files as { feet: string };
}

/** Rows in an order of their own, as a text for each key and the numbers of the rest. */
function rowsOf(table: Columns | Sheet, keys: readonly string[], names: readonly string[]) {
  const column = (name: string) =>
    typeof table.column === 'function' ? (table as Sheet).column(name) : toColumn((table as Columns)[name]);
  const [keyed, all] = [keys.map(column), names.map(column)];
  const at = (one: ReturnType<typeof column>, row: number) => one.values[row];
  const length = keyed[0].values.length;
  const rows = Array.from({ length }, (_, row) => ({
    key: keyed.map((one) => rounded(at(one, row))).join(' '),
    cells: all.map((one) => at(one, row)),
  }));
  return rows.sort((a, b) => (a.key < b.key ? -1 : 1));
}

const rounded = (cell: string | number) => (typeof cell === 'number' ? cell.toPrecision(9) : cell);

function expectCells(found: ReturnType<typeof rowsOf>, asked: ReturnType<typeof rowsOf>, names: readonly string[]) {
  expect(found.map(({ key }) => key)).toEqual(asked.map(({ key }) => key));
  for (const [row, { cells }] of asked.entries())
    for (const [at, cell] of cells.entries()) {
      const other = found[row].cells[at];
      if (typeof cell === 'string' || Number.isNaN(cell)) expect(other, names[at]).toEqual(cell);
      else expect(Math.abs((other as number) - cell), names[at]).toBeLessThanOrEqual(1e-12 * Math.abs(cell));
    }
}

async function expectSame(path: string, wanted: Sheet, keys: readonly string[]): Promise<void> {
  const { columns, computed } = await readParquet(await readFile(path));
  expect(Object.keys(columns)).toEqual(wanted.names);
  const [found, asked] = [columns, wanted].map((table) => rowsOf(table, keys, wanted.names));
  expectCells(found, asked, wanted.names);
  for (const name of wanted.names) {
    const { kind, unit } = wanted.describe(name);
    expect(toColumn(columns[name]).kind, name).toBe(kind);
    if (kind === 'number') expect(columns[name].unit, name).toBe(unit);
    if (wanted.checkedFormula(name) !== undefined) expect(columns[name].title, name).toBe(wanted.describe(name).title);
  }
  expect(computed.map(({ name }) => name)).toEqual(
    wanted.names.filter((name) => wanted.checkedFormula(name) !== undefined),
  );
}

async function expectAsTidy(tables: HerdTables, atOnce: number): Promise<void> {
  const { feet, ...rest } = await written(tables);
  const counts = await computeLargeHorses(feet, out, { ...rest, atOnce, columns: own });
  const wanted = herd(tables);
  expect(counts).toMatchObject({
    horses: wanted.horses.rows,
    intervals: wanted.intervals.rows,
    withoutErrors: ['off_all', 'twice_off_all'],
  });
  await expectSame(out.horses, wanted.horses, ['horse_id']);
  await expectSame(out.intervals, wanted.intervals, ['horse_id', 'limb', 'start_date']);
  await expectErrors(tables);
}

/** Each error is the one that the sheet of the whole herd propagates. */
async function expectErrors(tables: HerdTables): Promise<void> {
  const { feet } = herd(tables, { errors: usualErrors });
  for (const column of own) feet.add(column);
  const told = feet.names.filter((name) => (feet.column(name) as NumberColumn).error && !/off_all|repeat/.test(name));
  expect(told).toEqual(expect.arrayContaining(['toe_angle_deg', 'wall_level_mm', 'by_last', 'off_its_mean']));
  const { columns } = await readParquet(await readFile(out.errors));
  const keys = ['horse_id', 'date', 'limb', 'moment', 'repeat'];
  expect(Object.keys(columns)).toEqual([...keys, ...told.map((name) => partName(name, 'error'))]);
  const errors = told.map((name) => [
    partName(name, 'error'),
    { unit: feet.column(name).unit, values: (feet.column(name) as NumberColumn).error! },
  ]);
  const wanted: Columns = Object.fromEntries([...keys.map((name) => [name, feet.column(name)]), ...errors]);
  // Of two readings with the same keys either may come first.
  const byAll = Object.keys(wanted);
  expectCells(rowsOf(columns, byAll, byAll), rowsOf(wanted, byAll, byAll), byAll);
}

/** Small herds with all that may go wrong in them, in any order of rows. */
const someDay = fc.integer({ min: 20_000, max: 20_012 });
const someHorse = fc.constantFrom('Ada', 'Bo', '12', 'O’Neil "x"', '');
const number = (min: number, max: number) => fc.oneof(fc.double({ min, max, noNaN: true }), fc.constant(Number.NaN));
const someFoot = fc.record({
  ...{ horse_id: someHorse, date: someDay, limb: fc.constantFrom(...limbs) },
  ...{ moment: fc.constantFrom('before', 'after', 'between', ''), shod: fc.constantFrom(0, 1, Number.NaN) },
  ...{ toe_angle_deg: number(40, 65), heel_angle_deg: number(35, 65), pastern_angle_deg: number(40, 65) },
  ...{ toe_length_mm: number(60, 110), medial_wall_mm: number(40, 80), lateral_wall_mm: number(40, 80) },
  ...{ medial_heel_mm: number(20, 60), lateral_heel_mm: number(20, 60), foot_width_mm: number(90, 160) },
  ...{ foot_length_mm: number(90, 160), farrier: fc.constantFrom('M. Alder', ''), weight_kg: number(300, 700) },
});
const someVisit = fc.record({
  ...{ horse_id: fc.constantFrom('Ada', 'Bo', 'nobody'), date: someDay, work: fc.constantFrom('trim', 'none', '') },
  ...{ farrier: fc.constantFrom('J. Birch', ''), therapeutic: fc.constantFrom(0, 1, Number.NaN) },
});
const someHorses = fc.uniqueArray(
  fc.record({
    ...{ horse_id: fc.constantFrom('Ada', 'Cy', 'Di'), build: fc.constantFrom('pony', 'riding', '') },
    ...{ weight_kg: number(300, 700), girth_cm: number(150, 200), length_cm: number(140, 180) },
  }),
  { selector: ({ horse_id }) => horse_id },
);
const kinds: Readonly<Record<string, 'date' | 'boolean'>> = { date: 'date', shod: 'boolean', therapeutic: 'boolean' };

function columnsOf(rows: readonly Record<string, string | number>[]): Columns {
  return Object.fromEntries(
    Object.keys(rows[0]).map((name) => {
      const values = rows.map((row) => row[name]);
      if (typeof values[0] === 'string') return [name, TextColumn.from(values as string[])];
      return [name, { ...(kinds[name] && { kind: kinds[name] }), values: Float64Array.from(values as number[]) }];
    }),
  );
}

describe('the horses and intervals of a large table', () => {
  it('are those of the tidy tables of the demo herd, with its visits and from its feet alone', async () => {
    const { feet, horses, visits } = inventHerd(7);
    const tables = { feet: toColumns(feet), horses: toColumns(horses), visits: toColumns(visits) };
    await expectAsTidy(tables, 100);
    await expectAsTidy({ feet: tables.feet }, 50_000);
  });

  it('are those of the tidy tables of any herd, whatever rows stand where', async () => {
    const herds = fc.record({
      feet: fc.array(someFoot, { minLength: 1, maxLength: 40 }),
      horses: fc.option(someHorses, { nil: undefined }),
      visits: fc.option(fc.array(someVisit, { minLength: 1, maxLength: 10 }), { nil: undefined }),
    });
    await fc.assert(
      fc.asyncProperty(herds, fc.integer({ min: 1, max: 50 }), async ({ feet, horses, visits }, atOnce) => {
        const tables: HerdTables = {
          feet: columnsOf(feet),
          horses: horses?.length ? columnsOf(horses) : undefined,
          visits: visits && columnsOf(visits),
        };
        await expectAsTidy(tables, atOnce);
      }),
      { numRuns: 25 },
    );
  }, 300_000);

  it('are the same from CSV', async () => {
    const invented = inventHerd(7);
    const feet = join(folder, 'feet.csv');
    const read = toColumns(invented.feet);
    writeFileSync(feet, writeTable(read));
    await computeLargeHorses(feet, out, { atOnce: 200 });
    await expectSame(out.horses, herd({ feet: read }).horses, ['horse_id']);
  });

  it('need the keys of a horse, a day and a foot', async () => {
    const { feet } = await written({ feet: { horse_id: { values: ['Ada'] }, limb: { values: ['LF'] } } });
    await expect(computeLargeHorses(feet, out)).rejects.toThrow(
      /has no column date; it has horse_id, limb\. Large tables must be tidy/,
    );
  });
});

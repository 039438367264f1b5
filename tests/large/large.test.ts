import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inventHerd, toColumns } from '../../data/inventHerd.ts';
import { readParquet, writeParquet } from '../../lib/files/columnar/parquet.ts';
import { writeTable } from '../../lib/files/writeTable.ts';
import { type Herd, herd } from '../../lib/hoof/herd.ts';
import { beyond, rangeFor } from '../../lib/hoof/ranges.ts';
import { computeLargeFeet, LargeTable } from '../../lib/large.ts';
import { type ColumnInput, type NumberColumn, TextColumn } from '../../lib/sheet/column.ts';
import { levelChart, levelDistribution } from '../../lib/views/levelDistribution.ts';

const folder = mkdtempSync(join(tmpdir(), 'evenhoof-large-test-'));
const [feet, horses, out] = ['feet', 'horses', 'out'].map((name) => join(folder, `${name}.parquet`));
const own = {
  name: 'steeper',
  formula: "date > '2026-01-01' ? toe_angle_deg - mean(toe_angle_deg, horse_id) : missing()",
};
let yard: Herd;
let table: LargeTable;

/** Columns that a large table is given, and does not work out from visits. */
const measuredOf = (sheet: Herd['feet']): Record<string, ColumnInput> =>
  Object.fromEntries(
    sheet.names
      .filter((name) => sheet.checkedFormula(name) === undefined)
      .map((name) => [name, sheet.column(name) as ColumnInput]),
  );

beforeAll(async () => {
  const invented = inventHerd(7);
  yard = herd({
    feet: toColumns(invented.feet),
    horses: toColumns(invented.horses),
    visits: toColumns(invented.visits),
  });
  yard.feet.add(own);
  writeFileSync(feet, await writeParquet(measuredOf(yard.feet)));
  writeFileSync(horses, await writeParquet(yard.horses));
  await computeLargeFeet(feet, out, { horses, columns: [own] });
  table = await LargeTable.open(out);
});
afterAll(async () => {
  await table?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('a large table', () => {
  it('has every computed column of the herd, with the same values, units and formulas', async () => {
    const { columns, computed } = await readParquet(await readFile(out));
    const rowsOf = (of: Record<string, { values: ArrayLike<unknown> }>) =>
      Array.from(of.horse_id.values, (_, row) =>
        ['horse_id', 'date', 'limb', 'moment', 'repeat'].map((name) => of[name].values[row]).join(' '),
      );
    const names = yard.feet.names;
    const wanted = Object.fromEntries(names.map((name) => [name, yard.feet.column(name)]));
    const place = new Map(rowsOf(columns).map((key, row) => [key, row]));
    expect(place.size).toBe(yard.feet.rows);
    const order = rowsOf(wanted).map((key) => place.get(key)!);
    for (const name of names.filter((one) => yard.feet.checkedFormula(one) !== undefined)) {
      const { values, unit } = wanted[name] as NumberColumn;
      expect(columns[name].unit, name).toBe(unit);
      for (const [row, at] of order.entries()) {
        const found = columns[name].values[at] as number;
        if (Number.isNaN(values[row])) expect(found, name).toBeNaN();
        else
          expect(Math.abs(found - values[row]), name).toBeLessThanOrEqual(1e-12 * Math.max(100, Math.abs(values[row])));
      }
    }
    expect(computed.find(({ name }) => name === 'steeper')?.formula).toBe(own.formula);
    expect(columns.body_weight_kg.values.length).toBe(yard.feet.rows);
  });

  it('sums up what the level chart draws as the chart does from the rows', async () => {
    for (const column of ['wall_level_mm', 'heel_level_mm']) {
      const drawn = levelChart(await table.level(column), column);
      const wanted = levelDistribution(yard.feet, { column });
      expect(drawn.summary).toBe(wanted.summary);
      expect(drawn.options.height).toBe(wanted.options.height);
    }
    const { groups, reach } = await table.level('wall_level_mm');
    const { values } = yard.feet.column('wall_level_mm') as NumberColumn;
    expect(reach).toBe(values.reduce((most, value) => Math.max(most, Math.abs(value) || 0), 0));
    expect(groups.reduce((sum, { count }) => sum + count, 0)).toBe(
      values.filter((value) => !Number.isNaN(value)).length,
    );
  });

  it('counts what lies outside each range as the ranges themselves say', async () => {
    const limb = yard.feet.column('limb') as TextColumn;
    const build = yard.feet.column('build') as TextColumn;
    const shod = (yard.feet.column('shod') as NumberColumn).values;
    const weight = (yard.feet.column('body_weight_kg') as NumberColumn).values;
    const shares = await table.shares();
    expect(shares.length).toBeGreaterThan(8);
    for (const { measure, range, of, outside, missing } of shares) {
      const { values } = yard.feet.column(measure.name) as NumberColumn;
      const counted = { of: 0, outside: 0, missing: 0 };
      for (let row = 0; row < yard.feet.rows; row++) {
        const foot = {
          ...{ limb: limb.at(row) as 'LF', build: build.at(row) || undefined, weightKg: weight[row] },
          shod: Number.isNaN(shod[row]) ? undefined : shod[row] === 1,
        };
        if (rangeFor(yard.ranges.get(measure.name)!, foot) !== range) continue;
        if (Number.isNaN(values[row])) counted.missing++;
        else counted.of++;
        if (!Number.isNaN(values[row]) && beyond(range, values[row]) !== 0) counted.outside++;
      }
      expect({ of, outside, missing }, measure.name).toEqual(counted);
    }
  });

  it('tells means and quantiles limb by limb, and month by month', async () => {
    const spread = await table.spread(['toe_angle_deg']);
    const { values } = yard.feet.column('toe_angle_deg') as NumberColumn;
    const [limb, moment] = ['limb', 'moment'].map((name) => yard.feet.column(name) as TextColumn);
    const here = [...values].filter((value, row) => limb.at(row) === 'RH' && moment.at(row) === 'after' && value > 0);
    const found = spread.find((one) => one.limb === 'RH' && one.moment === 'after')!;
    expect(found.count).toBe(here.length);
    expect(found.mean).toBeCloseTo(here.reduce((sum, value) => sum + value, 0) / here.length, 9);
    const months = await table.spread(['toe_angle_deg'], 'month');
    expect(new Set(months.map(({ month }) => month)).size).toBeGreaterThan(6);
    expect(months.reduce((sum, { count }) => sum + count, 0)).toBe(spread.reduce((sum, { count }) => sum + count, 0));
  });

  it('is the same from CSV, where horses have numbers for names and columns are empty', async () => {
    const [numbered, again] = [join(folder, 'feet.csv'), join(folder, 'again.parquet')];
    const { horse_id, ...rest } = measuredOf(yard.feet);
    const { codes, levels } = horse_id as unknown as TextColumn;
    const names = new TextColumn(
      codes,
      levels.map((_, nth) => String(nth).padStart(3, '0')),
    );
    writeFileSync(numbered, writeTable({ horse_id: names, ...rest }));
    await computeLargeFeet(numbered, again);
    const read = await LargeTable.open(again);
    const columns = ['front_shape_over_hind_shape', 'toe_angle_left_minus_right_deg', 'whole_load_kg_per_cm2'];
    const [found, wanted] = [await read.spread(columns), await table.spread(columns)];
    await read.close();
    const rounded = (spreads: typeof found) =>
      spreads.map((one) => ({ ...one, mean: one.mean.toFixed(9), sd: one.sd.toFixed(9) }));
    expect(rounded(found)).toEqual(rounded(wanted));
    expect((await readParquet(await readFile(again))).columns.horse_id.values).toContain('007');
  });

  it('takes feet that nobody noted before or after for feet in between', async () => {
    const lean = join(folder, 'lean.csv');
    writeFileSync(lean, 'horse_id,date,limb,wall_level_mm\nAda,2026-03-09,LF,2\nAda,2026-03-09,RF,4\n');
    const read = await LargeTable.open(lean);
    const spread = await read.spread(['wall_level_mm']);
    await read.close();
    expect(spread.map(({ limb, moment, mean }) => [limb, moment, mean])).toEqual([
      ['LF', 'between', 2],
      ['RF', 'between', 4],
    ]);
  });

  it('takes a text in quotes as it is, however far down the first one stands', async () => {
    const [late, again] = [join(folder, 'late.csv'), join(folder, 'late.parquet')];
    const rows = Array.from({ length: 30_000 }, (_, row) => `H${row},2026-03-09,LF,calm`);
    writeFileSync(late, ['horse_id,date,limb,notes', ...rows, '"007",2026-03-09,LF,"calm, then ""not"""'].join('\n'));
    await computeLargeFeet(late, again);
    const { horse_id, notes } = (await readParquet(await readFile(again))).columns;
    const row = (horse_id.values as readonly string[]).indexOf('007');
    expect([horse_id.values[row], notes.values[row]]).toEqual(['007', 'calm, then "not"']);
  });

  const tidyRow = 'Ada,2026-03-09,LF,52\n';
  it.each([
    ['a title', 'Yard\n\nHorse,Date,Limb\nAda,2026-03-09,LF\n', /has no column horse_id; it has Yard\b/],
    [
      'a decimal comma',
      `${tidyRow}Ada,2026-03-09,RF,"51,5"\n`,
      /, line 3, column toe_angle_deg: found “51,5”, expected a number/,
    ],
    ['a unit', 'Ada,2026-03-09,LF,52°\n', /, line 2, column toe_angle_deg: found “52°”, expected a number/],
    ['other dates', 'Ada,09/03/2026,LF,52\n', /, column date: found “09\/03\/2026”, expected a date as 2026-03-09/],
    [
      'other limbs',
      `${tidyRow}Ada,2026-03-09,near fore,52\n`,
      /, column limb: found “near fore”, expected LF, RF, LH, RH/,
    ],
    ['too long a row', `${tidyRow.repeat(30_000)}Ada,2026-03-09,LF,52,1\n`, /, line 30002: found 5 cells, expected 4/],
    ['another encoding', `${tidyRow}B\xe9a,2026-03-09,RF,51\n`, /found bytes that are not UTF-8/],
  ])('refuses CSV with %s in a line that names the file and what to do', async (_, rows, words) => {
    const untidy = join(folder, 'untidy.csv');
    const headings = rows.startsWith('Yard') ? '' : 'horse_id,date,limb,toe_angle_deg\n';
    writeFileSync(untidy, headings + rows, rows.includes('\xe9') ? 'latin1' : 'utf8');
    const refusal = await computeLargeFeet(untidy, out).catch(({ message }: Error) => message);
    expect(refusal).toMatch(words);
    expect(refusal).toContain(untidy);
    expect(refusal).toMatch(
      /\. Large tables must be tidy: give what evenhoof tidy --format parquet makes of these files$/,
    );
  });

  it('refuses what it can’t use, and says what to do', async () => {
    const cut = join(folder, 'cut.parquet');
    writeFileSync(cut, (await readFile(feet)).subarray(0, 1000));
    await expect(computeLargeFeet(cut, out)).rejects.toThrow(/cut.parquet is no Parquet file, or not a whole one$/);
    await expect(computeLargeFeet(join(folder, 'none.parquet'), out)).rejects.toThrow(
      /none.parquet can't be read: there is no such file/,
    );
    await expect(computeLargeFeet(horses, out)).rejects.toThrow(/has no column date/);
    await expect(computeLargeFeet(feet, out, { horses: feet })).rejects.toThrow(/horses more than once/);
    await expect(table.level('limb')).rejects.toThrow(/no column of numbers limb/);
  });
});

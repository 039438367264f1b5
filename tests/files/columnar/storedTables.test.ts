import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readArrow, writeArrow } from '../../../lib/files/columnar/arrow.ts';
import { readParquet, rowGroupSize, writeParquet } from '../../../lib/files/columnar/parquet.ts';
import { StoredTableError } from '../../../lib/files/columnar/storedTable.ts';
import { FootSheet } from '../../../lib/hoof/footSheet.ts';
import { herd } from '../../../lib/hoof/herd.ts';
import { type Columns, TextColumn } from '../../../lib/sheet/column.ts';
import { anyUnmarkedTable, plain } from '../tables.ts';

const formats = [
  ['Arrow', writeArrow, readArrow],
  ['Parquet', writeParquet, readParquet],
] as const;

describe.each(formats)('a table in %s', (format, write, read) => {
  it('reads back as it was written, bit for bit', async () => {
    await fc.assert(
      fc.asyncProperty(anyUnmarkedTable, async (table) => {
        expect(plain((await read(await write(table))).columns)).toEqual(plain(table));
      }),
      { numRuns: 200 },
    );
  });

  it('keeps kinds, units and titles, and says what is known of a column by its name', async () => {
    const { columns } = await read(
      await write({
        toe_length_mm: { unit: 'mm', values: Float64Array.of(82.5, Number.NaN) },
        girth: { unit: 'cm', values: Float64Array.of(180, 181) },
        date: { kind: 'date', values: Float64Array.of(20_521, Number.NaN) },
        middle: { kind: 'date', values: Float64Array.of(20_521.5, 20_522) },
        limb: { values: ['LF', ''] },
      }),
    );
    expect(columns.toe_length_mm).toMatchObject({ unit: 'mm', title: 'Toe length' });
    expect(columns.girth.unit).toBe('cm');
    expect(['date', 'middle', 'limb'].map((name) => columns[name].kind)).toEqual(['date', 'date', 'text']);
  });

  it('holds no formula for what its table cannot work out, such as the weight that a foot has from its horse', async () => {
    const { feet } = herd({
      feet: { horse_id: { values: ['Wren'] }, date: { values: ['2026-03-09'] }, limb: { values: ['LF'] } },
      horses: { horse_id: { values: ['Wren'] }, weight_kg: { unit: 'kg', values: Float64Array.of(500) } },
    });
    const { columns, computed } = await read(await write(feet));
    const made = new Set(computed.map(({ name }) => name));
    expect(made).toContain('wall_level_mm');
    const measured = Object.entries(columns).filter(([name]) => !made.has(name));
    const again = FootSheet.from<Columns>(Object.fromEntries(measured), feet.keys, { computed });
    expect(again.names.map((name) => again.describe(name))).toEqual(feet.names.map((name) => feet.describe(name)));
    expect(again.column('body_weight_kg').values).toEqual(Float64Array.of(500));
  });

  it('keeps what a sheet computed with its formula, so that the sheet can be made again', async () => {
    const measured = {
      horse_id: { title: 'Horse', values: ['Wren', 'Wren'] },
      date: { title: 'Date', kind: 'date', values: Float64Array.of(20_521, 20_521) },
      limb: { title: 'Limb', values: ['LF', 'RF'] },
      toe_angle_deg: { title: 'Toe angle', unit: 'deg', values: Float64Array.of(52, 50.5) },
    } as const;
    const sheet = FootSheet.from<Columns>(measured);
    sheet.add({ name: 'steeper', title: 'Steeper', formula: 'toe_angle_deg - opposite(toe_angle_deg)' });
    const { columns, computed } = await read(await write(sheet));
    expect(computed).toEqual([
      { name: 'steeper', title: 'Steeper', unit: 'deg', formula: 'toe_angle_deg - opposite(toe_angle_deg)' },
    ]);
    const made = new Set(computed.map(({ name }) => name));
    const again = FootSheet.from<Columns>(
      Object.fromEntries(Object.entries(columns).filter(([name]) => !made.has(name))),
      [],
      { computed },
    );
    expect(again.names.map((name) => again.describe(name))).toEqual(sheet.names.map((name) => sheet.describe(name)));
    expect([...(again.column('steeper').values as Float64Array)]).toEqual([1.5, -1.5]);
  });

  it('takes an empty table, and a slice of a larger piece of memory', async () => {
    const empty = { limb: { values: [] }, toe_angle_deg: { unit: 'deg', values: new Float64Array(0) } };
    expect(plain((await read(await write(empty))).columns)).toEqual(plain(empty));
    const table = { toe_angle_deg: { unit: 'deg', values: Float64Array.of(52, 51) } };
    const bytes = await write(table);
    const within = new Uint8Array(bytes.length + 3);
    within.set(bytes, 3);
    expect(plain((await read(within.subarray(3))).columns)).toEqual(plain(table));
  });

  it('refuses what is no such file, and says so by its name', async () => {
    const broken = new TextEncoder().encode('horse_id,date,limb\n');
    await expect(read(broken, 'feet.csv')).rejects.toThrow(StoredTableError);
    await expect(read(broken, 'feet.csv')).rejects.toThrow(
      new RegExp(`feet.csv could not be read as an? ${format} file`),
    );
    await expect(write({ '': { values: Float64Array.of(1) } })).rejects.toThrow('Column 1 has no name');
  });
});

describe('Arrow', () => {
  it('hands out the file’s own memory where it holds the layout', async () => {
    const bytes = await writeArrow({
      whole: { values: Float64Array.of(1, 2, 3) },
      gaps: { values: Float64Array.of(1, Number.NaN, 3) },
      limb: TextColumn.from(['LF', 'LF', 'RF']),
    });
    const { columns } = await readArrow(bytes);
    for (const name of ['whole', 'gaps']) expect((columns[name].values as Float64Array).buffer).toBe(bytes.buffer);
    expect((columns.limb as TextColumn).codes.buffer).toBe(bytes.buffer);
  });
});

describe('Parquet', () => {
  it('goes on through as many groups of rows as the table is long', async () => {
    const rows = rowGroupSize + 5;
    const table = {
      nth: { values: Float64Array.from({ length: rows }, (_, row) => (row % 7 === 0 ? Number.NaN : row / 3)) },
      limb: new TextColumn(
        Int32Array.from({ length: rows }, (_, row) => (row % 5) - 1),
        ['LF', 'RF', 'LH', 'RH'],
      ),
    };
    const { columns } = await readParquet(await writeParquet(table));
    expect(columns.nth.values).toEqual(table.nth.values);
    expect(columns.limb.values).toEqual(table.limb.values);
  });
});

// Parquet and Arrow files against other readers and writers: DuckDB (@duckdb/node-api), apache-arrow, polars.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { tableFromArrays, tableFromIPC, tableToIPC } from 'apache-arrow';
import fc from 'fast-check';
import polars from 'nodejs-polars';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readArrow, writeArrow } from '../../lib/files/columnar/arrow.ts';
import { readParquet, writeParquet } from '../../lib/files/columnar/parquet.ts';
import { type Columns, toColumn } from '../../lib/sheet/column.ts';
import { isoFromDays } from '../../lib/sheet/days.ts';
import { anyUnmarkedTable, plain } from '../files/tables.ts';

let duckdb: DuckDBConnection;
let folder: string;
beforeAll(async () => {
  duckdb = await (await DuckDBInstance.create(':memory:')).connect();
  folder = mkdtempSync(join(tmpdir(), 'evenhoof-columnar-'));
});
afterAll(() => {
  duckdb.closeSync();
  rmSync(folder, { recursive: true, force: true });
});

const feet: Columns = {
  horse_id: { values: ['Wren', 'O’Malley', '', '馬'] },
  date: { kind: 'date', values: Float64Array.of(20_521, -1, Number.NaN, 0) },
  toe_angle_deg: { unit: 'deg', values: Float64Array.of(52.5, Number.NaN, 5e-324, 0.1 + 0.2) },
  shod: { kind: 'boolean', values: Float64Array.of(1, 0, Number.NaN, 1) },
};

/** The cells as JavaScript has them: `null` for missing, days for dates. */
function cells(columns: Columns): unknown[][] {
  return Object.values(columns).map((input) => {
    const { kind, values } = toColumn(input);
    return Array.from(values, (value: number | string) => {
      if (value === '' || Number.isNaN(value)) return null;
      return kind === 'boolean' ? value === 1 : value;
    });
  });
}

async function byDuckdb(file: string): Promise<unknown[][]> {
  const read = await duckdb.runAndReadAll(`SELECT * FROM '${file}'`);
  return read
    .getColumnsJS()
    .map((column) => column.map((value) => (value instanceof Date ? value.getTime() / 86_400_000 : value)));
}

describe('a Parquet file', () => {
  it('is to DuckDB what it is to us, of the same types', async () => {
    const file = join(folder, 'ours.parquet');
    writeFileSync(file, await writeParquet(feet));
    expect(await byDuckdb(file)).toEqual(cells(feet));
    const types = await duckdb.runAndReadAll(`DESCRIBE SELECT * FROM '${file}'`);
    expect(types.getColumnsJS()[1]).toEqual(['VARCHAR', 'DATE', 'DOUBLE', 'BOOLEAN']);
  });

  it('of any table is read by DuckDB to the last bit', async () => {
    let written = 0;
    await fc.assert(
      fc.asyncProperty(anyUnmarkedTable, async (table) => {
        // DuckDB keeps what it read of a file, and may not notice another of the same name within a moment.
        const file = join(folder, `any-${written++}.parquet`);
        writeFileSync(file, await writeParquet(table));
        // Of a table without rows DuckDB hands out no columns.
        const rows = Object.values(table)[0].values.length;
        expect(await byDuckdb(file)).toEqual(rows === 0 ? [] : cells(table));
      }),
      { numRuns: 100 },
    );
  });

  it.each(['snappy', 'gzip', 'zstd', 'uncompressed'])('that DuckDB wrote (%s) is read', async (codec) => {
    const file = join(folder, `theirs-${codec}.parquet`);
    await duckdb.run(`COPY (SELECT * REPLACE (toe_angle_deg + 1 AS toe_angle_deg), 7::BIGINT AS whole, 1.25::DECIMAL(5,2) AS money,
      TIMESTAMP '2026-03-09 23:59:59' AS moment, 3::TINYINT AS small FROM '${join(folder, 'ours.parquet')}')
      TO '${file}' (FORMAT parquet, CODEC '${codec}')`);
    const { columns } = await readParquet(readFileSync(file));
    const first = Object.entries(columns).map(([name, { values }]) => [name, values[0]]);
    expect(Object.fromEntries(first)).toEqual({
      ...{
        horse_id: 'Wren',
        date: 20_521,
        toe_angle_deg: 53.5,
        shod: 1,
        whole: 7,
        money: 1.25,
        moment: 20_521,
        small: 3,
      },
    });
    expect(columns.date.kind).toBe('date');
    expect(columns.horse_id.values).toEqual(['Wren', 'O’Malley', '', '馬']);
  });

  it('with a list in it is refused by the name of the column', async () => {
    const file = join(folder, 'lists.parquet');
    await duckdb.run(`COPY (SELECT [1, 2] AS toes) TO '${file}'`);
    await expect(readParquet(readFileSync(file), 'lists.parquet')).rejects.toThrow(
      'The column toes of lists.parquet holds neither numbers, dates, texts nor yes and no',
    );
  });

  it('is to polars, which looks into its Arrow schema, what it is to us', async () => {
    const file = join(folder, 'polars.parquet');
    writeFileSync(file, await writeParquet(feet));
    const frame = polars.readParquet(file);
    expect(frame.getColumn('toe_angle_deg').toArray()).toEqual(cells(feet)[2]);
    expect(frame.getColumn('shod').toArray()).toEqual(cells(feet)[3]);
    expect(frame.getColumn('horse_id').cast(polars.Utf8).toArray()).toEqual(cells(feet)[0]);
  });
});

describe('an Arrow file', () => {
  it('of any table is to apache-arrow what it is to us', async () => {
    await fc.assert(
      fc.asyncProperty(anyUnmarkedTable, async (table) => {
        const read = tableFromIPC(await writeArrow(table));
        const found = Object.keys(table).map((name, at) => {
          const column = read.getChildAt(at)!;
          return Array.from(column, (value) =>
            value !== null && toColumn(table[name]).kind === 'date' ? Number(value) / 86_400_000 : value,
          );
        });
        expect(found).toEqual(cells(table));
      }),
      { numRuns: 200 },
    );
  });

  it('says its units in the metadata of its fields', async () => {
    const { schema } = tableFromIPC(await writeArrow(feet));
    const field = schema.fields.find(({ name }) => name === 'toe_angle_deg')!;
    expect(Object.fromEntries(field.metadata)).toMatchObject({ kind: 'number', unit: 'deg', title: 'Toe angle' });
  });

  it.each(['file', 'stream'] as const)('that apache-arrow wrote (%s) is read', async (format) => {
    const theirs = tableFromArrays({
      whole: Int32Array.of(1, 2),
      half: Float32Array.of(0.5, 1.5),
      limb: ['LF', 'RF'],
      gaps: [1.5, null],
      shod: [true, false],
      date: [new Date('2026-03-09'), null],
    });
    const { columns } = await readArrow(tableToIPC(theirs, format));
    expect(cells(columns)).toEqual([
      ...[
        [1, 2],
        [0.5, 1.5],
        ['LF', 'RF'],
        [1.5, null],
        [true, false],
      ],
      [20_521, null],
    ]);
    expect(isoFromDays(columns.date.values[0] as number)).toBe('2026-03-09');
  });

  it('is to polars what it is to us, and the other way round', async () => {
    const frame = polars.readIPC(Buffer.from(await writeArrow(feet)));
    expect(frame.getColumn('toe_angle_deg').toArray()).toEqual(cells(feet)[2]);
    expect(frame.getColumn('horse_id').cast(polars.Utf8).toArray()).toEqual(cells(feet)[0]);
    const theirs = join(folder, 'theirs.arrow');
    frame.withColumn(frame.getColumn('horse_id').cast(polars.Utf8)).writeIPC(theirs, { compression: 'uncompressed' });
    expect(plain((await readArrow(readFileSync(theirs))).columns).map((column) => ({ ...column, unit: '' }))).toEqual(
      plain(feet).map((column) => ({ ...column, unit: '' })),
    );
  });
});

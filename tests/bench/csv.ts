import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { DuckDBInstance } from '@duckdb/node-api';
import { fromCSV } from 'arquero';
import { csvParse } from 'd3-dsv';
import polars from 'nodejs-polars';
import { readTable } from '../../lib/files/readTable.ts';
import { writeTable } from '../../lib/files/writeTable.ts';
import { against, type BenchRow, interleaved, processorTime } from './interleaved.ts';

const measures = ['toe_angle_deg', 'heel_angle_deg', 'toe_length_mm', 'heel_length_mm'];
const more = ['medial_wall_mm', 'lateral_wall_mm', 'foot_width_mm', 'foot_length_mm'];

/** Feet as a yard would note them, 72 bytes a row; the same at each run. */
function feet(rows: number): string {
  let state = 1;
  const reading = (low: number, high: number) => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return (low + ((high - low) * state) / 0x7fffffff).toFixed(1);
  };
  const lines = [['horse_id,date,limb,moment,repeat', ...measures, ...more].join(',')];
  for (let row = 0; row < rows; row++) {
    const horse = `H${String((row >> 4) % 5000).padStart(5, '0')}`;
    const date = new Date(Date.UTC(2024, 0, 1 + 42 * Math.floor(row / 80_000))).toISOString().slice(0, 10);
    const key = `${horse},${date},${['LF', 'RF', 'LH', 'RH'][row & 3]},${row & 4 ? 'after' : 'before'},${1 + ((row >> 3) & 1)}`;
    const angles = `${reading(45, 56)},${reading(40, 52)},${reading(70, 98)},${reading(30, 50)}`;
    lines.push(`${key},${angles},${reading(50, 70)},${reading(50, 70)},${reading(99, 150)},${reading(99, 150)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** How much memory a process takes at most to read a file, above what it took before, in MB; on Linux. */
function peakMemory(path: string): number {
  const reader = new URL('../../dist/large.js', import.meta.url).href;
  const script = `
    import { readFileSync } from 'node:fs';
    // The kernel starts this anew for a new program, and the figure that Node gives it does not.
    const peak = () => Number(/VmHWM:\\s+(\\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]) / 1024;
    const { readTableFile } = await import('${reader}');
    const before = peak();
    await readTableFile(process.argv[1]);
    console.log(peak() - before);`;
  return Number(execFileSync(process.execPath, ['--input-type=module', '-e', script, path]).toString());
}

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

/** Takes up the garbage of a round, so that nobody pays for another's; other threads go on with that for a while. */
async function collect(): Promise<void> {
  collectGarbage();
  await setTimeout(200);
}

/** As it is installed: only there a second thread finds the code it runs. */
async function installed(): Promise<typeof import('../../lib/large.ts')> {
  return import(new URL('../../dist/large.js', import.meta.url).href);
}

export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhoof-csv-'));
  try {
    const path = join(folder, 'feet.csv');
    const text = feet(1_000_000);
    writeFileSync(path, text);
    const { readTableFile } = await installed();
    const db = await (await DuckDBInstance.create()).connect();
    const ofManyThreads = {
      ours: () => readTableFile(path),
      'DuckDB into its engine': () => db.run(`CREATE OR REPLACE TABLE feet AS SELECT * FROM read_csv('${path}')`),
      'polars to JavaScript': () => {
        const frame = polars.readCSV(path);
        return [...measures, ...more].map((name) => frame.getColumn(name).toTypedArray());
      },
      'ours, one thread': () => readTable(readFileSync(path)),
    };
    const { collect: _worked, ...working } = await interleaved({ ...ofManyThreads, collect }, 5, processorTime);
    const { collect: _read, ...reading } = await interleaved(
      { ...ofManyThreads, Arquero: () => fromCSV(text), 'd3-dsv, untyped': () => csvParse(text), collect },
      5,
    );

    const { columns } = readTable(text);
    const table = fromCSV(text);
    const frame = polars.readCSV(path);
    const { collect: _written, ...writing } = await interleaved(
      {
        ours: () => writeTable(columns),
        Arquero: () => table.toCSV(),
        polars: () => frame.writeCSV(),
        collect,
      },
      3,
    );
    return [
      ...against('CSV in, 1,000,000 feet', reading, {
        Arquero: 'at most 1/8',
        'DuckDB into its engine': 'faster',
        'polars to JavaScript': 'faster',
      }),
      ...against('CSV in, 1,000,000 feet, time of all processors', working),
      ...against('CSV out, 1,000,000 feet', writing, { Arquero: 'at most 1/5', polars: 'level' }),
      {
        ...{ what: 'CSV in, 1,000,000 feet, peak memory in MB', peer: 'size of the file' },
        ...{ ours: peakMemory(path), theirs: text.length / 2 ** 20, goal: 'at most 4 ×' },
      },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

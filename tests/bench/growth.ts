import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { fromCSV } from 'arquero';
import { readTable } from '../../lib/files/readTable.ts';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import { type Limb, limbs, oppositeOf } from '../../lib/hoof/limbs.ts';
import { computeLarge, computeLargeFeet, LargeTable } from '../../lib/large.ts';
import type { NumberColumn, TextColumn } from '../../lib/sheet/column.ts';
import { quantile } from '../../lib/stats/index.ts';
import { against, type BenchRow, interleaved, type Work } from './interleaved.ts';
import { writeLargeFeet } from './largeFeet.ts';

/** Minutes long: only where it is named. */
export const onDemand = true;

const sizes = [10_000, 100_000, 1_000_000, 10_000_000];
/** Beyond these, rows as objects and data frames of text would take the memory that is there, or minutes. */
const upTo: Readonly<Record<string, number>> = { Arquero: 1_000_000, R: 1_000_000 };

// The question that each answers from the same file: the quartiles of the wall's level and of the toe angles of pairs,
// limb by limb.

const columns = [
  { name: 'level', formula: 'medial_wall_mm - lateral_wall_mm' },
  { name: 'pair', formula: 'toe_angle_deg - opposite(toe_angle_deg)' },
];

function byOurs(csv: string): number[] {
  const read = readTable(readFileSync(csv), { schema: 'feet' });
  const sheet = FootSheet.from(read.columns, [], { computed: columns });
  const { codes, levels } = sheet.column('limb') as TextColumn;
  return columns.flatMap(({ name }) => {
    const { values } = sheet.column(name) as NumberColumn;
    return limbs.flatMap((limb) => {
      const code = levels.indexOf(limb);
      return quantile(
        values.filter((value, row) => codes[row] === code && !Number.isNaN(value)),
        [0.25, 0.5, 0.75],
      );
    });
  });
}

function byArquero(csv: string): number[] {
  const feet = fromCSV(readFileSync(csv, 'utf8')).derive({
    // Arquero takes what is missing for 0.
    level: (d: Row) =>
      d.medial_wall_mm == null || d.lateral_wall_mm == null ? null : d.medial_wall_mm - d.lateral_wall_mm,
  });
  const other = feet.select('horse_id', 'date', 'moment', 'repeat', 'limb', 'toe_angle_deg');
  const keys = ['horse_id', 'date', 'moment', 'repeat'];
  const opposite = Object.fromEntries(limbs.map((limb) => [limb, oppositeOf(limb)]));
  const joined = feet
    .params({ opposite })
    .derive({ partner: (d: Row, $: { opposite: Record<string, Limb> }) => $.opposite[d.limb] })
    .join_left(other.rename({ toe_angle_deg: 'other_angle', limb: 'other_limb' }), [
      [...keys, 'partner'],
      [...keys, 'other_limb'],
    ])
    .derive({
      pair: (d: Row) => (d.toe_angle_deg == null || d.other_angle == null ? null : d.toe_angle_deg - d.other_angle),
    });
  const found = joined.groupby('limb').rollup({
    ...Object.fromEntries(
      columns.flatMap(({ name }) =>
        [0.25, 0.5, 0.75].map((p) => [`${name}_${p}`, `d => op.quantile(d.${name}, ${p})`]),
      ),
    ),
  });
  const rows = new Map((found.objects() as Row[]).map((row) => [row.limb, row]));
  return columns.flatMap(({ name }) =>
    limbs.flatMap((limb) => [0.25, 0.5, 0.75].map((p) => Number(rows.get(limb)![`${name}_${p}`]))),
  );
}

// biome-ignore lint/suspicious/noExplicitAny: Arquero's rows have no types
type Row = any;

const rScript = `
feet <- read.csv(commandArgs(TRUE)[1], stringsAsFactors = FALSE)
feet$level <- feet$medial_wall_mm - feet$lateral_wall_mm
key <- paste(feet$horse_id, feet$date, feet$moment, feet[['repeat']])
other <- c(LF = 'RF', RF = 'LF', LH = 'RH', RH = 'LH')
feet$pair <- feet$toe_angle_deg - feet$toe_angle_deg[match(paste(key, other[feet$limb]), paste(key, feet$limb))]
for (column in c('level', 'pair')) for (limb in c('LF', 'RF', 'LH', 'RH'))
  cat(quantile(feet[[column]][feet$limb == limb], c(.25, .5, .75), na.rm = TRUE), '')`;

function byR(csv: string): number[] {
  const said = execFileSync('Rscript', ['-e', rScript, csv], { encoding: 'utf8' });
  return said.trim().split(/\s+/).map(Number);
}

const duckdbQuestion = (csv: string) => `
  WITH pairs AS (SELECT horse_id, date, moment, repeat,
    ${limbs.map((limb) => `MAX(toe_angle_deg) FILTER (limb = '${limb}') AS ${limb}`).join(', ')}
    FROM read_csv('${csv}') GROUP BY ALL),
  feet AS (SELECT limb, medial_wall_mm - lateral_wall_mm AS level,
    toe_angle_deg - CASE limb WHEN 'LF' THEN RF WHEN 'RF' THEN LF WHEN 'LH' THEN RH ELSE LH END AS pair
    FROM read_csv('${csv}') JOIN pairs USING (horse_id, date, moment, repeat))
  SELECT limb, QUANTILE_CONT(level, [0.25, 0.5, 0.75]) AS level, QUANTILE_CONT(pair, [0.25, 0.5, 0.75]) AS pair
  FROM feet GROUP BY limb`;

/** All sizes in turn, each file asked by all in the same run; where answers differ, it ends with an error. */
export async function bench(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'evenhoof-growth-'));
  const instance = await DuckDBInstance.create(':memory:', { memory_limit: '3GB', temp_directory: folder });
  const duckdb = await instance.connect();
  try {
    const rows: BenchRow[] = [];
    for (const size of sizes) {
      const [parquet, csv, copy, out] = ['feet.parquet', 'feet.csv', 'copy.parquet', 'out.parquet'].map((name) =>
        join(folder, name),
      );
      await writeLargeFeet(duckdb, parquet, size);
      await duckdb.run(`COPY (SELECT * FROM '${parquet}') TO '${csv}' (FORMAT csv)`);
      const feet = `${size.toLocaleString('en')} feet`;

      const tables = join(folder, 'tables');
      mkdirSync(tables, { recursive: true });
      const whole = await timed(size, {
        ours: () => computeLarge(parquet, tables),
        'ours, the feet alone': () => computeLargeFeet(parquet, out, { scratch: folder }),
        'DuckDB copying the file': () => duckdb.run(`COPY (SELECT * FROM '${parquet}') TO '${copy}' (FORMAT parquet)`),
      });
      rows.push(...against(`feet, horses and intervals, Parquet to Parquet, ${feet}`, whole));

      const answers = new Map<string, number[]>();
      const keep = (name: string, answer: (csv: string) => number[]) => () => answers.set(name, answer(csv));
      const byDuckdb = async () => {
        const found = await duckdb.runAndReadAll(duckdbQuestion(csv));
        const byLimb = new Map(found.getRowObjectsJS().map((row) => [row.limb, row]));
        answers.set(
          'DuckDB',
          columns.flatMap(({ name }) => limbs.flatMap((limb) => byLimb.get(limb)![name] as number[])),
        );
      };
      const peers: Record<string, Work> = {
        ours: keep('ours', byOurs),
        DuckDB: byDuckdb,
        Arquero: keep('Arquero', byArquero),
        R: keep('R', byR),
      };
      const asked = Object.fromEntries(Object.entries(peers).filter(([name]) => size <= (upTo[name] ?? size)));
      rows.push(...against(`level and pairs from CSV, ${feet}`, await timed(size, asked as Record<'ours', Work>)));
      for (const [name, answer] of answers) agree(answers.get('ours')!, answer, `${name}, ${feet}`);

      const table = await LargeTable.open(out, { scratch: folder });
      const question = await timed(size, {
        ours: () => table.level('wall_level_mm'),
        'DuckDB, quartiles alone': () =>
          duckdb.runAndReadAll(
            `SELECT limb, moment, QUANTILE_CONT(wall_level_mm, [0.25, 0.5, 0.75]) FROM '${out}' GROUP BY ALL`,
          ),
      });
      await table.close();
      rows.push(...against(`the level page's question, ${feet}`, question));
    }
    return rows;
  } finally {
    duckdb.closeSync();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Small sizes several times, the largest once: what takes so long is hardly swayed by its first run. */
async function timed<Name extends string>(size: number, works: Record<Name, Work>): Promise<Record<Name, number>> {
  if (size < 1_000_000) return interleaved(works, 3);
  const times = {} as Record<Name, number>;
  for (const name of Object.keys(works) as Name[]) {
    const started = performance.now();
    await works[name]();
    times[name] = performance.now() - started;
  }
  return times;
}

function agree(wanted: readonly number[], found: readonly number[], who: string): void {
  const same = wanted.length === found.length && wanted.every((value, at) => Math.abs(value - found[at]) < 1e-9);
  if (!same) throw new Error(`${who} answers ${found.join(' ')} where ours is ${wanted.join(' ')}`);
}

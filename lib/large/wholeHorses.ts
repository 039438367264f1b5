import { contextOf } from '../hoof/context.ts';
import type { HerdTables } from '../hoof/herd.ts';
import { measured } from '../hoof/measured.ts';
import { type Columns, rowCount, TextColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import { type Engine, identifier } from './engine.ts';
import type { Source } from './source.ts';
import { levelsOf, StoredColumns, together } from './storedColumns.ts';

/** Where whole horses come from. */
export interface HorseSources {
  readonly feet: Source;
  readonly horses?: Source;
  readonly visits?: Source;
}

/** The type of the engine that numbers the horses. */
const horseType = 'horse';

/**
 * The tables of a herd too large for memory, some whole horses at a time, each as `herd` takes them.
 * @param engine  one that keeps the order of rows
 * @param atOnce  about so many rows of feet
 * @param more  columns of the feet that are wanted besides those that a herd knows
 * @returns horses in no order, each once; those without feet come last
 */
export async function* wholeHorses(
  engine: Engine,
  { feet, horses, visits }: HorseSources,
  atOnce: number,
  more: ReadonlySet<string> = new Set(),
): AsyncGenerator<HerdTables> {
  const named = [feet, horses].filter((source) => source !== undefined);
  const names = named.map(({ from }) => `SELECT CAST(horse_id AS VARCHAR) AS name FROM ${from}`).join(' UNION ALL ');
  await engine.run(`CREATE TYPE ${horseType} AS ENUM (SELECT DISTINCT COALESCE(name, '') FROM (${names}))`);
  const known = await levelsOf(engine, horseType);
  const usable = feet.columns.filter(({ name }) => more.has(name) || isOfHerd(name));
  const [readFeet, readHorses, readVisits] = await Promise.all([
    StoredColumns.of(engine, 'feet', { ...feet, columns: usable }, horseType),
    horses && StoredColumns.of(engine, 'horses', horses, horseType),
    visits && StoredColumns.of(engine, 'visits', visits, horseType),
  ]);
  const horseRows = readHorses && new RowsByHorse(await readHorses.all(), known.length);
  const visitRows = readVisits && new RowsByHorse(await readVisits.all(), known.length);
  const tablesOf = (codes: readonly number[], some: Columns): HerdTables => {
    const own = codes.map((code) => known[code]);
    const place = new Map(codes.map((code, at) => [code, at]));
    const renamed = (columns: Columns) => withNames(columns, place, own);
    return {
      feet: renamed(some),
      horses: horseRows && renamed(horseRows.of(codes)),
      visits: visitRows && renamed(visitRows.of(codes)),
    };
  };

  const seen = new Uint8Array(known.length);
  const sorted = (await lieTogether(engine, feet)) ? '' : ` ORDER BY ${identifier('horse_id')}`;
  let waiting: (readonly Float64Array[])[] = [];
  let rows = 0;
  for await (const block of engine.doubles(readFeet.statement + sorted)) {
    waiting.push(block);
    rows += block[0].length;
    if (rows < atOnce) continue;
    const joined = together(waiting);
    const horse = joined[readFeet.horseAt];
    // The last horse may have more rows to come.
    let end = rows - 1;
    while (end > 0 && horse[end - 1] === horse[rows - 1]) end--;
    waiting = [joined.map((values) => values.slice(end))];
    rows -= end;
    if (end > 0) yield tablesOf(...piece(readFeet, joined, end, seen));
  }
  if (rows > 0) yield tablesOf(...piece(readFeet, together(waiting), rows, seen));
  const without = known.flatMap((name, code) => (name !== '' && seen[code] === 0 ? [code] : []));
  const none = readFeet.columns(readFeet.kinds.map(() => new Float64Array(0)));
  for (let from = 0; from < without.length; from += atOnce) yield tablesOf(without.slice(from, from + atOnce), none);
}

/** The first rows as columns, and whose they are. */
function piece(read: StoredColumns, joined: readonly Float64Array[], rows: number, seen: Uint8Array) {
  const codes = [...new Set(joined[read.horseAt].subarray(0, rows))];
  for (const code of codes) seen[code] = 1;
  return [codes, read.columns(joined.map((values) => values.subarray(0, rows)))] as const;
}

const measuredNames = new Set(measured.map(({ name }) => name));

function isOfHerd(name: string): boolean {
  return measuredNames.has(name) || contextOf(name) !== undefined;
}

/** Whether all rows of each horse follow each other in one file, so that none has to be sorted. */
async function lieTogether(engine: Engine, { from, columnar }: Source): Promise<boolean> {
  if (!columnar) return false;
  const spans = `SELECT MIN(filename) = MAX(filename) AND MAX(file_row_number) - MIN(file_row_number) + 1 = COUNT(*) AS whole
    FROM read_parquet(${from}, filename = true, file_row_number = true) GROUP BY horse_id`;
  const [{ whole }] = await engine.rows(`SELECT BOOL_AND(whole) AS whole FROM (${spans})`);
  return whole === true;
}

/** The same columns with the horses' names, which are those of a few horses. */
function withNames(columns: Columns, place: ReadonlyMap<number, number>, names: readonly string[]): Columns {
  const { codes } = columns.horse_id as unknown as TextColumn;
  const horse_id = new TextColumn(
    codes.map((code) => (names[place.get(code) ?? -1] ? place.get(code)! : -1)),
    names,
  );
  return { ...columns, horse_id };
}

/** A table with its rows to be had horse by horse. */
class RowsByHorse {
  readonly #columns: Columns;
  readonly #starts: Int32Array;
  readonly #order: Int32Array;

  constructor(columns: Columns, horses: number) {
    this.#columns = columns;
    const { codes } = columns.horse_id as unknown as TextColumn;
    this.#starts = new Int32Array(horses + 1);
    for (const code of codes) if (code >= 0) this.#starts[code + 1]++;
    for (let horse = 0; horse < horses; horse++) this.#starts[horse + 1] += this.#starts[horse];
    const next = this.#starts.slice();
    this.#order = new Int32Array(rowCount(columns));
    for (const [row, code] of codes.entries()) if (code >= 0) this.#order[next[code]++] = row;
  }

  of(horses: readonly number[]): Columns {
    const rows = horses.flatMap((horse) => [...this.#order.subarray(this.#starts[horse], this.#starts[horse + 1])]);
    return Object.fromEntries(Object.entries(this.#columns).map(([name, column]) => [name, gather(column, rows)]));
  }
}

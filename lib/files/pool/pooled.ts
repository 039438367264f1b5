import { contextOf, type TableName } from '../../hoof/context.ts';
import { normalise } from '../../hoof/normalise.ts';
import { type Column, type Columns, rowCount, TextColumn, toColumn } from '../../sheet/column.ts';
import { gather } from '../../sheet/gather.ts';
import { say } from '../../words/say.ts';
import { schemas } from '../schemas.ts';
import { PoolError } from './poolError.ts';
import type { PoolKey } from './poolKey.ts';
import { namesSomeone, type PoolChoices, type PoolTreatment, poolTreatment } from './poolTreatment.ts';
import { daysMoved, pseudonym } from './pseudonym.ts';

/** The tables of a herd; the feet at least. */
export type PoolTables = { readonly [name in TableName]?: Columns } & { readonly feet: Columns };

/** What became of one column. */
export interface PooledColumn {
  readonly table: TableName;
  readonly name: string;
  readonly treatment: PoolTreatment;
}

export interface Pooled {
  readonly tables: PoolTables;
  /** Every column that came in, in order. */
  readonly columns: readonly PooledColumn[];
  /** How many texts were taken out of columns that keep their own words only. */
  readonly textsTakenOut: number;
  /** How many rows were left out because they name no horse. */
  readonly rowsLeftOut: number;
}

const tableNames: readonly TableName[] = ['feet', 'horses', 'visits'];

/**
 * Tables of a herd for a pool of several: names become pseudonyms, the dates of each horse are moved by its own number of
 * days, and what nobody knows anything about is left out. The same key gives the same pseudonyms and days, so that later
 * exports join. Rows stand in the order of pseudonyms, which says nothing of that of the names.
 * @param tables  as read or typed in; texts that could not be read are not among them
 * @param choices  columns to keep or to leave out besides
 * @returns tables whose computed columns are those of the originals, but for what hangs on the season
 * @throws HerdError for tables that are none of a herd
 * @throws PoolError for a choice that can't be followed
 * @example const { tables } = await pooled({ feet }, await openPoolKey(newPoolKey()))
 */
export async function pooled(tables: PoolTables, key: PoolKey, choices: PoolChoices = {}): Promise<Pooled> {
  const given = tableNames.flatMap((table) => {
    const columns = tables[table];
    return columns ? [{ table, columns: normalise(columns, table).columns }] : [];
  });
  const columns = given.flatMap(({ table, columns }) =>
    Object.entries(columns).map(([name, input]): PooledColumn => {
      return { table, name, treatment: poolTreatment(name, toColumn(input).kind, choices) };
    }),
  );
  check(columns, choices);
  const standIns = new StandIns(key);
  const made: { -readonly [name in TableName]?: Columns } = {};
  let [textsTakenOut, rowsLeftOut] = [0, 0];
  for (const { table, columns: before } of given) {
    const horses = toColumn(before.horse_id) as TextColumn;
    const days = await Promise.all(horses.levels.map((horse) => daysMoved(key, horse)));
    const after: Columns = Object.create(null);
    for (const { name, treatment } of columns.filter((one) => one.table === table)) {
      const column = toColumn(before[name]);
      if (treatment === 'kept') after[name] = column;
      if (treatment === 'named') after[name] = await standIns.column(name, column);
      if (treatment === 'moved') after[name] = moved(column, horses, days);
      if (treatment === 'worded') {
        after[name] = ownWordsOnly(name, column as TextColumn);
        textsTakenOut += lost(column as TextColumn, after[name] as TextColumn);
      }
    }
    const order = rowsInOrder(after);
    rowsLeftOut += rowCount(after) - order.length;
    made[table] = Object.fromEntries(Object.entries(after).map(([name, column]) => [name, gather(column, order)]));
  }
  return { tables: made as PoolTables, columns, textsTakenOut, rowsLeftOut };
}

/** The columns that are left out, and stay where someone asks to keep them. */
export function leftOutOfPool(tables: PoolTables): string[] {
  const names = tableNames.flatMap((table) =>
    Object.entries(tables[table] ?? {}).map(([name, input]) => [name, toColumn(input).kind] as const),
  );
  const asked = names.filter(([name, kind]) => poolTreatment(name, kind) === 'left out' && !namesSomeone(name));
  return [...new Set(asked.map(([name]) => name))];
}

function check(columns: readonly PooledColumn[], { keep = [], leaveOut = [] }: PoolChoices): void {
  const needed = new Set(columns.flatMap(({ table }) => schemas[table].required));
  for (const name of [...keep, ...leaveOut])
    if (!columns.some((one) => one.name === name))
      throw new PoolError(
        say`There is no column ${name} to keep or leave out, only ${[...new Set(columns.map((one) => one.name))].join(', ')}`,
      );
  for (const name of keep)
    if (namesSomeone(name))
      throw new PoolError(say`The column ${name} names someone and gets pseudonyms; it can’t be kept as it is`);
  for (const name of leaveOut)
    if (needed.has(name)) throw new PoolError(say`A table is nothing without its column ${name}; it can’t be left out`);
}

/** Pseudonyms, each worked out once, and no two alike. */
class StandIns {
  readonly #key: PoolKey;
  readonly #known = new Map<string, string>();
  readonly #taken = new Map<string, string>();

  constructor(key: PoolKey) {
    this.#key = key;
  }

  async column(name: string, column: Column): Promise<TextColumn> {
    const { codes, levels } = asText(column);
    return new TextColumn(codes, await Promise.all(levels.map((text) => this.#of(name, text.trim()))));
  }

  async #of(column: string, text: string): Promise<string> {
    const whole = JSON.stringify([column, text]);
    const known = this.#known.get(whole) ?? (await pseudonym(this.#key, column, text));
    this.#known.set(whole, known);
    if ((this.#taken.get(known) ?? whole) !== whole)
      throw new PoolError(say`Two names come out alike under this key. Have a new key made`);
    this.#taken.set(known, whole);
    return known;
  }
}

function asText(column: Column): TextColumn {
  if (column instanceof TextColumn) return column;
  return TextColumn.from(Array.from(column.values, (value) => (Number.isNaN(value) ? '' : String(value))));
}

function moved(column: Column, horses: TextColumn, days: readonly number[]): Column {
  const { kind, unit, values } = column as Exclude<Column, TextColumn>;
  const shifted = values.map((value, row) => (horses.codes[row] < 0 ? Number.NaN : value + days[horses.codes[row]]));
  return { kind, unit, values: shifted };
}

function ownWordsOnly(name: string, { codes, levels }: TextColumn): TextColumn {
  const own = contextOf(name)?.words ?? {};
  const words = levels.filter((level) => Object.hasOwn(own, level));
  const codeOf = levels.map((level) => words.indexOf(level));
  return new TextColumn(
    codes.map((code) => (code < 0 ? -1 : codeOf[code])),
    words,
  );
}

function lost(before: TextColumn, after: TextColumn): number {
  return before.codes.reduce((sum, code, row) => sum + Number(code >= 0 && after.codes[row] < 0), 0);
}

/** Rows that have a horse, by its pseudonym and day; those of a day stay in their order, which numbers their repeats. */
function rowsInOrder({ horse_id, date }: Columns): number[] {
  const { codes, levels } = toColumn(horse_id) as TextColumn;
  const places = new Map([...levels].sort().map((level, place) => [level, place]));
  const place = levels.map((level) => places.get(level)!);
  const day = (row: number) => {
    const value = date ? (date.values as Float64Array)[row] : 0;
    return Number.isNaN(value) ? Number.POSITIVE_INFINITY : value;
  };
  return Array.from(codes.keys())
    .filter((row) => codes[row] >= 0)
    .sort((a, b) => place[codes[a]] - place[codes[b]] || compared(day(a), day(b)));
}

const compared = (a: number, b: number) => (a === b ? 0 : a < b ? -1 : 1);

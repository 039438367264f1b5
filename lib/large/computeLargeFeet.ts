import { arrowSchemaKey, arrowSchemaText } from '../files/columnar/arrowSchema.ts';
import { contextOf } from '../hoof/context.ts';
import { FootSheet } from '../hoof/footSheet.ts';
import { defaultShareInFront, defaultWeightDivisor } from '../hoof/herd.ts';
import { measured } from '../hoof/measured.ts';
import { measures } from '../hoof/measures/index.ts';
import type { ColumnInput, Kind } from '../sheet/column.ts';
import type { ComputedDefinition } from '../sheet/edits.ts';
import { sqlOf } from '../sheet/sqlOf.ts';
import { Engine, type EngineOptions, type FoundColumn, identifier, text } from './engine.ts';
import { LargeTableError } from './largeTableError.ts';
import { type Source, sourceOf, sourceOfFeet } from './source.ts';
import { storedKind, storedValue } from './storedKind.ts';

export interface LargeOptions extends EngineOptions {
  /** A file of horses, whose weight, girth, length, build and year of birth are joined to the feet. */
  readonly horses?: string;
  /** Computed columns of one's own. */
  readonly columns?: readonly ComputedDefinition[];
}

/** What of a horse a foot's columns rest on. */
const ofHorses = ['build', 'birth_year', 'weight_kg', 'girth_cm', 'length_cm'];

/** The same columns as a herd's feet have, each a formula. */
const builtIn: readonly ComputedDefinition[] = [
  { name: 'end', formula: "limb == 'LF' || limb == 'RF' ? 'front' : 'hind'" },
  { name: 'side', formula: "limb == 'LF' || limb == 'LH' ? 'left' : 'right'" },
  { name: 'share_in_front', formula: String(defaultShareInFront) },
  { name: 'weight_divisor', formula: `quantity(${defaultWeightDivisor}, 'cm3/kg')` },
  ...measures
    .filter(({ name, table }) => table === 'feet' || name === 'body_weight_kg')
    .map(({ name, title, formula, unit }) => ({ name, title, formula, unit })),
];

/**
 * Computes all built-in columns of feet for a table larger than memory, from file to file: the formulas' own statement,
 * run by DuckDB.
 * @param feet  tidy feet in Parquet or CSV, or several files by a pattern: columns by our names, in our units and words
 * @param out  the Parquet file to write: what was stored, what was computed, and in its schema units and formulas
 * @returns how many rows and columns were written
 * @throws LargeTableError where a file can't be read, lacks `horse_id`, `date` or `limb` or names limbs in other words, or DuckDB is not installed
 * @throws FormulaError where a formula of one's own can't be used
 * @example await computeLargeFeet('feet.parquet', 'tidy/feet.parquet', { horses: 'horses.parquet' })
 */
export async function computeLargeFeet(
  feet: string,
  out: string,
  options: LargeOptions = {},
): Promise<{ readonly rows: number; readonly columns: number }> {
  const { horses, columns = [] } = options;
  const engine = await Engine.open(options);
  try {
    const computed = [...builtIn, ...columns];
    const horse = horses === undefined ? undefined : await sourceOfHorses(engine, horses);
    const joined = horse?.columns ?? [];
    const foot = await sourceOfFeet(engine, feet);
    const afresh = new Set([...computed, ...joined].map(({ name }) => name));
    const found = foot.columns.filter(({ name }) => !afresh.has(name));
    const sheet = emptySheet([...found, ...joined], computed);
    await engine.run(`CREATE VIEW feet AS ${joinedSource(sheet, { ...foot, columns: found }, horse)}`);
    const dates = [...found, ...joined].filter((column) => storedKind(column) === 'date').map(({ name }) => name);
    const statement = sqlOf(sheet, 'feet', { dialect: 'duckdb', dates });
    const schema = `{${text(arrowSchemaKey)}: ${text(await arrowSchemaText(sheet))}}`;
    await engine.run(`COPY (${statement}) TO ${text(out)} (FORMAT parquet, KV_METADATA ${schema})`);
    const [{ rows }] = await engine.rows(`SELECT COUNT(*) AS rows FROM ${text(out)}`);
    return { rows: rows as number, columns: sheet.names.length };
  } finally {
    await engine.close();
  }
}

async function sourceOfHorses(engine: Engine, horses: string): Promise<Source> {
  const { columns, ...source } = await sourceOf(engine, horses, ['horse_id']);
  const [{ twice }] = await engine.rows(
    `SELECT COUNT(horse_id) - COUNT(DISTINCT horse_id) AS twice FROM ${source.from}`,
  );
  if (twice !== 0) throw new LargeTableError(`${horses} has ${twice} horses more than once; leave one row a horse`);
  return { ...source, columns: columns.filter(({ name }) => ofHorses.includes(name)) };
}

/** A sheet without rows, which knows kinds, units and formulas. */
function emptySheet(found: readonly FoundColumn[], computed: readonly ComputedDefinition[]): FootSheet {
  const columns: Record<string, ColumnInput & { title?: string }> = Object.create(null);
  for (const column of found) {
    const kind = storedKind(column);
    if (kind === undefined)
      throw new LargeTableError(`The column ${column.name} holds ${column.type}. Leave it out of the table`);
    columns[column.name] = empty(column.name, kind);
  }
  for (const name of [...measured.filter(({ table }) => table === 'feet').map((row) => row.name), ...ofHorses])
    if (!Object.hasOwn(columns, name)) columns[name] = empty(name, name === 'build' ? 'text' : 'number');
  return FootSheet.from(columns, ['horse_id', 'date', 'limb'], { computed });
}

function empty(name: string, kind: Kind): ColumnInput & { title?: string } {
  const known = measured.find((row) => row.name === name);
  const title = known?.title ?? contextOf(name)?.title;
  const said = { kind, ...(title && { title }) };
  return kind === 'text'
    ? { ...said, values: [] }
    : { ...said, ...(known && { unit: known.unit }), values: new Float64Array(0) };
}

/** The stored columns as the statement expects them, those that a file lacks missing throughout. */
function joinedSource(sheet: FootSheet, feet: Source, horses: Source | undefined): string {
  const given = new Map([
    ...feet.columns.map((column) => [column.name, storedValue(column, 'f')] as const),
    ...(horses?.columns ?? []).map((column) => [column.name, storedValue(column, 'h')] as const),
  ]);
  const columns = sheet.names
    .filter((name) => sheet.checkedFormula(name) === undefined)
    .map((name) => {
      const lacking = sheet.describe(name).kind === 'text' ? 'NULL::VARCHAR' : 'NULL::DOUBLE';
      return `${given.get(name) ?? lacking} AS ${identifier(name)}`;
    });
  const join =
    horses === undefined
      ? ''
      : ` LEFT JOIN ${horses.from} AS h ON CAST(f.horse_id AS VARCHAR) = CAST(h.horse_id AS VARCHAR)`;
  return `SELECT ${columns.join(', ')} FROM ${feet.from} AS f${join}`;
}

import { schemas } from '../files/schemas.ts';
import { limbs } from '../hoof/limbs.ts';
import { measured } from '../hoof/measured.ts';
import type { Kind } from '../sheet/column.ts';
import { type Engine, type FoundColumn, identifier, text } from './engine.ts';
import { untidy } from './untidy.ts';

/** A file as a statement names it, and its columns. */
export interface Source {
  readonly from: string;
  readonly columns: readonly FoundColumn[];
  /** Whether it is Parquet. */
  readonly columnar: boolean;
}

const types: Readonly<Record<Kind, string>> = { number: 'DOUBLE', date: 'DATE', boolean: 'BOOLEAN', text: 'VARCHAR' };
const known = new Map(
  [
    ...measured.map(({ name }) => ({ name, kind: 'number' as const })),
    ...schemas.feet.columns,
    ...schemas.horses.columns,
    ...schemas.visits.columns,
  ].map(({ name, kind }) => [name, types[kind]]),
);

/** Said, because the engine guesses from the first rows, where there may be no quotation mark and a day can be a month. */
const csv = `skip = 0, header = true, quote = '"', escape = '"', dateformat = '%Y-%m-%d', nullstr = ''`;

/**
 * A Parquet or CSV file. CSV has no types: columns that we know get theirs, so that `007` stays a name and an empty
 * column of numbers is one; of others the engine guesses.
 * @param keys  columns that it must have
 * @throws LargeTableError where it can't be read or lacks one of them
 */
export async function sourceOf(engine: Engine, file: string, keys: readonly string[] = []): Promise<Source> {
  const columnar = !/\.(csv|tsv|txt)(\.gz)?$/i.test(file);
  const found = await engine.columns(columnar ? text(file) : `read_csv(${text(file)}, ${csv})`, file);
  const lacking = keys.find((name) => !found.some((column) => column.name === name));
  if (lacking !== undefined) throw untidy(`${file} has no column ${lacking}; it has ${some(found)}`);
  if (columnar) return { from: text(file), columns: found, columnar };
  const given = found
    .filter(({ name }) => known.has(name))
    .map(({ name }) => `${text(name)}: ${text(known.get(name)!)}`);
  const typed = given.length === 0 ? '' : `, types = {${given.join(', ')}}`;
  const from = `read_csv(${text(file)}, ${csv}${typed})`;
  return { from, columns: await engine.columns(from, file), columnar };
}

/** A list of columns, of many the first ones. */
function some(columns: readonly FoundColumn[]): string {
  const names = columns.slice(0, 8).map(({ name }) => name);
  return columns.length > names.length
    ? `${names.join(', ')} and ${columns.length - names.length} more`
    : names.join(', ');
}

/** What words of feet must be: others would be passed over in silence. */
const words = { limb: limbs, moment: ['before', 'after', 'between'] } as const;

/**
 * A file of feet.
 * @throws LargeTableError where it can't be read, lacks a key, or names limbs or moments in other words than ours
 */
export async function sourceOfFeet(engine: Engine, file: string): Promise<Source> {
  const source = await sourceOf(engine, file, ['horse_id', 'date', 'limb']);
  const asked = Object.entries(words).filter(([name]) => source.columns.some((column) => column.name === name));
  const others = asked.map(([name, known]) => {
    const word = `CAST(${identifier(name)} AS VARCHAR)`;
    return `MIN(${word}) FILTER (${word} NOT IN ('', ${known.map(text).join(', ')})) AS ${name}`;
  });
  const [found] = await engine.rows(`SELECT ${others.join(', ')} FROM ${source.from}`);
  for (const [name, known] of asked)
    if (found[name] !== null)
      throw untidy(`${file}, column ${name}: found “${found[name]}”, expected ${known.join(', ')}`);
  return source;
}

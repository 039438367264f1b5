import { schemas } from '../files/schemas.ts';
import { measured } from '../hoof/measured.ts';
import type { Kind } from '../sheet/column.ts';
import { type Engine, type FoundColumn, text } from './engine.ts';

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

/**
 * A Parquet or CSV file. CSV has no types: columns that we know get theirs, so that `007` stays a name and an empty
 * column of numbers is one; of others the engine guesses.
 * @throws LargeTableError where it can't be read
 */
export async function sourceOf(engine: Engine, file: string): Promise<Source> {
  const found = await engine.columns(text(file), file);
  if (!/\.(csv|tsv|txt)(\.gz)?$/i.test(file)) return { from: text(file), columns: found, columnar: true };
  const given = found
    .filter(({ name }) => known.has(name))
    .map(({ name }) => `${text(name)}: ${text(known.get(name)!)}`);
  const typed = given.length === 0 ? '' : `, types = {${given.join(', ')}}`;
  const from = `read_csv(${text(file)}, nullstr = ''${typed})`;
  return { from, columns: await engine.columns(from, file), columnar: false };
}

import { usualErrors } from '../hoof/errors.ts';
import { herd } from '../hoof/herd.ts';
import type { ComputedDefinition } from '../sheet/edits.ts';
import { Engine, type EngineOptions } from './engine.ts';
import { errorSheet } from './errorSheet.ts';
import { sourceOf, sourceOfFeet } from './source.ts';
import { TableWriter } from './tableWriter.ts';
import { wholeHorses } from './wholeHorses.ts';
import { withinHorses } from './withinHorses.ts';

export interface LargeHorsesOptions extends EngineOptions {
  /** A file of horses; left out, they are what the feet say of them. */
  readonly horses?: string;
  /** A file of visits; left out, they are the days with a measurement before or after the work. */
  readonly visits?: string;
  /** Computed columns of one's own, for the errors. */
  readonly columns?: readonly ComputedDefinition[];
  /** About how many rows of feet go through at once. */
  readonly atOnce?: number;
}

/**
 * The tables of horses and of intervals between visits for feet larger than memory: whole horses, some at a time, go
 * through `herd`, so that each row is the one that `evenhoof tidy` writes.
 * @param feet  tidy feet as for `computeLargeFeet`; Parquet in which the rows of each horse follow each other is not sorted first
 * @param out  the Parquet files to write; `errors`, where wanted: for each reading the standard errors of its values, measured
 *   and computed, from those of the table of measured columns, because so large a table may pool many ways of measuring
 * @returns how many rows each has, and which of one's own columns rest on more than single horses, so that their errors aren't told
 * @throws LargeTableError where a file can't be read or lacks a key, or DuckDB is not installed
 * @throws HerdError where a measured column holds text
 * @example await computeLargeHorses('feet.parquet', { horses: 'tidy/horses.parquet', intervals: 'tidy/intervals.parquet' })
 */
export async function computeLargeHorses(
  feet: string,
  out: { readonly horses: string; readonly intervals: string; readonly errors?: string },
  { horses, visits, columns = [], memory = '1GB', atOnce = 50_000, ...options }: LargeHorsesOptions = {},
): Promise<{ readonly horses: number; readonly intervals: number; readonly withoutErrors: readonly string[] }> {
  const engine = await Engine.open({ memory, ...options }, true);
  try {
    const sources = {
      feet: await sourceOfFeet(engine, feet),
      horses: horses === undefined ? undefined : await sourceOf(engine, horses, ['horse_id']),
      visits: visits === undefined ? undefined : await sourceOf(engine, visits, ['horse_id', 'date']),
    };
    const [ofHorses, ofIntervals, ofErrors] = ['horses', 'intervals', 'errors'].map(
      (name) => new TableWriter(engine, name),
    );
    const withErrors = out.errors !== undefined;
    const more = new Set(withErrors ? sources.feet.columns.map(({ name }) => name) : []);
    const withoutErrors = new Set<string>();
    for await (const tables of wholeHorses(engine, sources, atOnce, more)) {
      const some = herd(tables, { errors: withErrors ? usualErrors : [] });
      await ofHorses.add(some.horses);
      await ofIntervals.add(some.intervals);
      if (!withErrors) continue;
      for (const column of columns) some.feet.add(column);
      for (const { name } of columns) if (!withinHorses(some.feet, name)) withoutErrors.add(name);
      await ofErrors.add(errorSheet(some.feet, withoutErrors));
    }
    await ofHorses.write(out.horses);
    await ofIntervals.write(out.intervals);
    if (out.errors !== undefined) await ofErrors.write(out.errors);
    return { horses: ofHorses.rows, intervals: ofIntervals.rows, withoutErrors: [...withoutErrors] };
  } finally {
    await engine.close();
  }
}

import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { computeLargeFeet } from './computeLargeFeet.ts';
import { computeLargeHorses, type LargeHorsesOptions } from './computeLargeHorses.ts';
import { makeFolders } from './makeFolders.ts';

export interface LargeRun extends Pick<LargeHorsesOptions, 'columns' | 'horses' | 'visits'> {
  /** Whether the standard errors of the single values are written too, to `errors.parquet`. */
  readonly errors?: boolean;
}

/** What each of the two takes; together with the process itself less than 4 GiB. */
const memories = { feet: '2GB', horses: '800MB' } as const;

/**
 * The tidy tables of feet larger than memory, from file to file: `feet.parquet`, `horses.parquet` and `intervals.parquet`
 * with all their built-in columns. The engine works at the feet while whole horses go through this thread.
 * @param feet  as for `computeLargeFeet`
 * @param folder  where they are written; it is made where it is not there
 * @returns how many rows each has, and which of one's own columns have no errors because they rest on more than single horses
 * @throws as `computeLargeFeet` and `computeLargeHorses`
 * @example await computeLarge('feet.parquet', 'tidy', { horses: 'horses.parquet', visits: 'visits.parquet' })
 */
export async function computeLarge(
  feet: string,
  folder: string,
  { horses, visits, columns, errors }: LargeRun = {},
): Promise<{
  readonly feet: number;
  readonly horses: number;
  readonly intervals: number;
  readonly withoutErrors: readonly string[];
}> {
  makeFolders(folder);
  const out = (name: string) => join(folder, `${name}.parquet`);
  const threads = Math.max(1, availableParallelism() - 1);
  // Neither is left alone at work where the other fails.
  const [ofFeet, ofHorses] = await Promise.allSettled([
    computeLargeFeet(feet, out('feet'), { horses, columns, scratch: folder, memory: memories.feet, threads }),
    computeLargeHorses(
      feet,
      { horses: out('horses'), intervals: out('intervals'), errors: errors ? out('errors') : undefined },
      { horses, visits, columns, scratch: folder, memory: memories.horses, threads },
    ),
  ]);
  if (ofFeet.status === 'rejected') throw ofFeet.reason;
  if (ofHorses.status === 'rejected') throw ofHorses.reason;
  return { feet: ofFeet.value.rows, ...ofHorses.value };
}

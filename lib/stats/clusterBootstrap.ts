import { type BcaLimits, type BootstrapLimits, bcaLimits, bootstrapLimits } from './bootstrapLimits.ts';
import type { Numbers } from './numbers.ts';
import { random } from './random.ts';
import { rowsByGroup } from './rowsByGroup.ts';

export interface ClusterBootstrap extends BootstrapLimits {
  readonly clusters: number;
  readonly draws: number;
  /** The statistic of all rows. */
  readonly observed: number;
  readonly bca: BcaLimits;
  readonly replicates: Float64Array;
  /** The statistic with each cluster left out in turn: also how much each one matters. */
  readonly jackknife: Float64Array;
}

export interface ClusterBootstrapOptions {
  readonly draws?: number;
  readonly seed?: number;
  readonly level?: number;
  /** Called about a hundred times on the way, with how many draws are done. */
  readonly onProgress?: (done: number, total: number) => void;
}

/**
 * The bootstrap of whole clusters: rows of one cluster are alike, so clusters are drawn with replacement and bring all
 * their rows. Where every row is its own cluster this is the ordinary bootstrap.
 * @param clusters which cluster a row belongs to, any numbers, none missing
 * @param statistic from row numbers, some more than once, to a number; called `draws` times and once a cluster
 * @param options `draws` 1,999, `seed` 1 and `level` 0.95 where not given
 * @returns what was observed, its bias, standard error and four intervals, in the unit of the statistic
 * @source Davison & Hinkley 1997, Bootstrap Methods and their Application, 3.8
 * @example clusterBootstrap([0, 0, 1, 2], (rows) => mean(Array.from(rows, (row) => y[row])), { seed: 7 }).percentile
 */
export function clusterBootstrap(
  clusters: Numbers,
  statistic: (rows: Int32Array) => number,
  { draws = 1999, seed = 1, level = 0.95, onProgress }: ClusterBootstrapOptions = {},
): ClusterBootstrap {
  const members = rowsByGroup(clusters);
  const { below } = random(seed);
  const observed = statistic(joined(members));
  const jackknife = Float64Array.from(members, (left) => statistic(joined(members.filter((rows) => rows !== left))));
  const often = Math.ceil(draws / 100);
  const replicates = Float64Array.from({ length: draws }, (_, done) => {
    if (done > 0 && done % often === 0) onProgress?.(done, draws);
    return statistic(joined(members.map(() => members[below(members.length)])));
  });
  onProgress?.(draws, draws);
  return {
    clusters: members.length,
    draws,
    observed,
    ...bootstrapLimits(replicates, observed, level),
    bca: bcaLimits(replicates, observed, jackknife, level),
    replicates,
    jackknife,
  };
}

function joined(parts: readonly Int32Array[]): Int32Array {
  const rows = new Int32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let filled = 0;
  for (const part of parts) {
    rows.set(part, filled);
    filled += part.length;
  }
  return rows;
}

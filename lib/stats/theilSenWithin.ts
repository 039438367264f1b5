import { type Numbers, presentRows } from './numbers.ts';
import { quantileSorted } from './quantile.ts';
import { random } from './random.ts';
import { rowsByGroup } from './rowsByGroup.ts';

export interface TheilSenWithin {
  /** In units of y a unit of x; NaN where x varies in no group. */
  readonly slope: number;
  /** A percentile interval of the bootstrap by cluster. */
  readonly lower: number;
  readonly upper: number;
  /** Pairs of rows of one group that differ in x. */
  readonly pairs: number;
  readonly n: number;
  readonly missing: number;
}

export interface TheilSenWithinOptions {
  /** Which cluster a row belongs to, where groups are not independent: drawn as wholes. The groups where not given. */
  readonly clusters?: Numbers;
  /** 1,999 where not given. */
  readonly draws?: number;
  /** 1 where not given. */
  readonly seed?: number;
  /** 0.95 where not given. */
  readonly level?: number;
}

/**
 * A robust slope within groups: the weighted median of the slopes between all pairs of rows of one group, each weighing
 * as much as its rows lie apart in x. A quarter of wild outcomes does not move it far, and what groups differ by on the
 * whole drops out.
 * @param x one number a row; a row with anything missing is left out and counted
 * @param y the outcome, one number a row
 * @param groups which group a row belongs to, any numbers
 * @source Sen 1968, Journal of the American Statistical Association 63:1379–1389; the weights: Sievers 1978, 73:628–631
 * @example theilSenWithin([1, 2, 3, 1, 2], [1, 3, 5, 11, 13], [0, 0, 0, 1, 1]).slope // 2
 */
export function theilSenWithin(
  x: Numbers,
  y: Numbers,
  groups: Numbers,
  { clusters = groups, draws = 1999, seed = 1, level = 0.95 }: TheilSenWithinOptions = {},
): TheilSenWithin {
  const { columns, missing } = presentRows([x, y, groups, clusters]);
  const [u, v, group, cluster] = columns;
  const numberOf = new Map<number, number>();
  for (const name of cluster) if (!numberOf.has(name)) numberOf.set(name, numberOf.size);
  const pairs: { slope: number; weight: number; cluster: number }[] = [];
  for (const rows of rowsByGroup(group))
    for (let i = 0; i < rows.length; i++)
      for (let j = 0; j < i; j++) {
        const apart = u[rows[i]] - u[rows[j]];
        if (apart === 0) continue;
        const slope = (v[rows[i]] - v[rows[j]]) / apart;
        pairs.push({ slope, weight: Math.abs(apart), cluster: numberOf.get(cluster[rows[i]])! });
      }
  pairs.sort((a, b) => a.slope - b.slope);
  const slopes = Float64Array.from(pairs, ({ slope }) => slope);
  const weights = Float64Array.from(pairs, ({ weight }) => weight);
  const home = Int32Array.from(pairs, (pair) => pair.cluster);
  const count = numberOf.size;
  const times = new Float64Array(count).fill(1);
  const slope = weightedMedian(slopes, weights, home, times);
  const { below } = random(seed);
  const drawn = new Float64Array(pairs.length === 0 ? 0 : draws);
  for (let draw = 0; draw < drawn.length; draw++) {
    times.fill(0);
    for (let i = 0; i < count; i++) times[below(count)]++;
    drawn[draw] = weightedMedian(slopes, weights, home, times);
  }
  const sorted = drawn.filter((value) => !Number.isNaN(value)).sort();
  const head = { slope, pairs: pairs.length, n: u.length, missing };
  return {
    ...head,
    lower: quantileSorted(sorted, (1 - level) / 2),
    upper: quantileSorted(sorted, (1 + level) / 2),
  };
}

/** The place in sorted values that has half the weight on either side; half-way where a gap has. */
function weightedMedian(values: Float64Array, weights: Float64Array, home: Int32Array, times: Float64Array): number {
  let total = 0;
  for (let i = 0; i < values.length; i++) total += weights[i] * times[home[i]];
  if (total === 0) return NaN;
  let below = 0;
  for (let i = 0; i < values.length; i++) {
    const weight = weights[i] * times[home[i]];
    if (weight === 0) continue;
    below += weight;
    if (below > total / 2) return values[i];
    if (below < total / 2) continue;
    let next = i + 1;
    while (weights[next] * times[home[next]] === 0) next++;
    return (values[i] + values[next]) / 2;
  }
  return NaN;
}

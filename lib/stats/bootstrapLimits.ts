import { normal } from './distributions/normal.ts';
import { mean } from './mean.ts';
import { type Numbers, present } from './numbers.ts';
import { sd } from './sd.ts';

export interface Interval {
  readonly lower: number;
  readonly upper: number;
}

export interface BootstrapLimits {
  /** The mean of the replicates minus what was observed. */
  readonly bias: number;
  readonly se: number;
  /** Observed less bias, give or take so many standard errors. */
  readonly normal: Interval;
  /** The percentiles turned round about what was observed. */
  readonly basic: Interval;
  readonly percentile: Interval;
}

/**
 * The plain intervals from bootstrap replicates.
 * @param replicates the statistic of each resample, in any one unit; missing ones are left out
 * @param observed the statistic of the data themselves, in the same unit
 * @param level 0.95 where not given
 * @returns all in the unit of the statistic; NaN of no replicates
 * @source Davison & Hinkley 1997, Bootstrap Methods and their Application, 5.2 and 5.3
 * @example bootstrapLimits([1, 2, 3], 2, 0.5).percentile // { lower: 1, upper: 3 }
 */
export function bootstrapLimits(replicates: Numbers, observed: number, level = 0.95): BootstrapLimits {
  const sorted = present(replicates).sort();
  const bias = mean(sorted) - observed;
  const se = sd(sorted);
  const reach = normal.quantile((1 + level) / 2) * se;
  const lower = orderStatistic(sorted, (1 - level) / 2);
  const upper = orderStatistic(sorted, (1 + level) / 2);
  return {
    bias,
    se,
    normal: { lower: observed - bias - reach, upper: observed - bias + reach },
    basic: { lower: 2 * observed - upper, upper: 2 * observed - lower },
    percentile: { lower, upper },
  };
}

export interface BcaLimits extends Interval {
  /** The normal deviate of the share of replicates below what was observed. */
  readonly z0: number;
  readonly acceleration: number;
  /** Which percentiles the limits are. */
  readonly probabilities: readonly [number, number];
}

/**
 * The bias-corrected and accelerated interval: percentiles moved for bias, and for a spread that changes with the
 * statistic, the latter from the jackknife.
 * @param replicates the statistic of each resample, in any one unit; missing ones are left out
 * @param observed the statistic of the data themselves
 * @param jackknife the statistic with each case, or each cluster, left out in turn
 * @param level 0.95 where not given
 * @returns the limits in the unit of the statistic; NaN where all replicates lie on one side of what was observed
 * @source Efron 1987, Journal of the American Statistical Association 82:171–185
 */
export function bcaLimits(replicates: Numbers, observed: number, jackknife: Numbers, level = 0.95): BcaLimits {
  const sorted = present(replicates).sort();
  const below = sorted.reduce((count, value) => count + (value < observed ? 1 : 0), 0);
  const z0 = normal.quantile(below / sorted.length);
  let [squares, cubes] = [0, 0];
  for (const value of present(jackknife)) {
    const influence = observed - value;
    squares += influence ** 2;
    cubes += influence ** 3;
  }
  const acceleration = squares > 0 ? cubes / (6 * squares ** 1.5) : 0;
  const moved = (p: number) => {
    const z = z0 + normal.quantile(p);
    return normal.cdf(z0 + z / (1 - acceleration * z));
  };
  const probabilities = [moved((1 - level) / 2), moved((1 + level) / 2)] as const;
  const lower = orderStatistic(sorted, probabilities[0]);
  return { lower, upper: orderStatistic(sorted, probabilities[1]), z0, acceleration, probabilities };
}

/** The (R + 1)p-th of R sorted replicates, between two by the normal scale (Davison & Hinkley 1997, equation 5.8). */
function orderStatistic(sorted: Float64Array, p: number): number {
  const count = sorted.length + 1;
  const rank = Math.floor(count * p + 1e-9);
  if (!(rank >= 1)) return Number.isNaN(p) || sorted.length === 0 ? NaN : sorted[0];
  if (rank >= sorted.length) return sorted[sorted.length - 1];
  const [here, next] = [sorted[rank - 1], sorted[rank]];
  if (Math.abs(count * p - rank) < 1e-9) return here;
  const from = normal.quantile(rank / count);
  return here + ((normal.quantile(p) - from) / (normal.quantile((rank + 1) / count) - from)) * (next - here);
}

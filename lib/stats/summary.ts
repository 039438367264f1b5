import { mean } from './mean.ts';
import { type Numbers, present } from './numbers.ts';
import { quantileSorted } from './quantile.ts';
import { sd } from './sd.ts';

export interface Summary {
  readonly n: number;
  readonly missing: number;
  readonly mean: number;
  readonly sd: number;
  /** The standard error of the mean, sd / √n. */
  readonly se: number;
  readonly min: number;
  readonly lowerQuartile: number;
  readonly median: number;
  readonly upperQuartile: number;
  readonly max: number;
}

/**
 * What a sample looks like in ten numbers.
 * @param values any numbers; a missing one is left out and counted
 * @returns everything in the unit of `values`, quartiles by type 7; NaN of none, `sd` and `se` NaN of fewer than two
 * @example summary([1, 2, 3, 10, NaN]).mean // 4
 */
export function summary(values: Numbers): Summary {
  const kept = present(values);
  const n = kept.length;
  const spread = sd(kept);
  const head = { n, missing: values.length - n, mean: mean(kept), sd: spread, se: spread / Math.sqrt(n) };
  kept.sort();
  const [min, lowerQuartile, median, upperQuartile, max] = [0, 0.25, 0.5, 0.75, 1].map((q) => quantileSorted(kept, q));
  return { ...head, min, lowerQuartile, median, upperQuartile, max };
}

import { mad, median } from '../stats/index.ts';

/** So many standard deviations away a value is far. Common practice, no source. */
const FAR = 3.5;
/** Of fewer values nobody can say what is usual. */
const LEAST = 5;

/**
 * The rows whose values are far from those of the others, the farthest first: by more than 3.5 standard deviations, as
 * the median distance from the median estimates them.
 * @param values  `NaN` for missing
 * @returns none of fewer than five values, or where half of them are the same
 * @example farFromOthers(Float64Array.of(500, 510, 520, 530, 900)) // [4]
 */
export function farFromOthers(values: Float64Array): number[] {
  const middle = median(values);
  const spread = mad(values);
  const far = (row: number) => Math.abs(values[row] - middle) / spread;
  if (values.filter((value) => !Number.isNaN(value)).length < LEAST || spread === 0) return [];
  return Array.from(values.keys())
    .filter((row) => far(row) > FAR)
    .sort((a, b) => far(b) - far(a));
}

import { type PowerOptions, powerOfEstimate } from './powerOfEstimate.ts';
import { rootBetween } from './rootBetween.ts';

/** What is compared: pairs (or one sample) against zero, or two groups of `n` each, or of `n` and `other`. */
export type MeansDesign = 'pairs' | 'two groups';

export interface MeansOptions extends PowerOptions {
  /** `pairs` where not given. */
  readonly design?: MeansDesign;
  /** How many the second of two groups has, `n` where not given. */
  readonly other?: number;
}

/**
 * The power of Student's t test.
 * @param n pairs, or members of each group; need not be whole
 * @param difference the true mean difference, in any unit
 * @param sd of the differences in pairs, or of the values in groups, in the same unit
 * @returns a share from 0 to 1; NaN of fewer than two
 * @source Cohen 1988, Statistical Power Analysis for the Behavioral Sciences, 2nd edition, ch. 2
 * @example powerOfMeans(12, 1.5, 2, { bothTails: false }) // 0.6581…
 */
export function powerOfMeans(n: number, difference: number, sd: number, options: MeansOptions = {}): number {
  const { design = 'pairs', other = n } = options;
  if (!(n > 1)) return NaN;
  if (design === 'pairs') return powerOfEstimate(difference, sd / Math.sqrt(n), n - 1, options);
  return powerOfEstimate(difference, sd * Math.sqrt(1 / n + 1 / other), n + other - 2, options);
}

/**
 * How many pairs, or members of each of two equal groups, give a wanted power.
 * @param power the share of studies that should see the difference, above the level and below 1
 * @returns not rounded: round it up; NaN where the difference is zero
 * @example Math.ceil(pairsNeeded(0.5, 1, 0.8)) // 34
 */
export function pairsNeeded(
  difference: number,
  sd: number,
  power: number,
  options: Omit<MeansOptions, 'other'> = {},
): number {
  return rootBetween((n) => powerOfMeans(n, difference, sd, options) - power, 1 + 1e-6, 4);
}

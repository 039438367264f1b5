import { anova } from './anova.ts';
import { chiSquared } from './distributions/chiSquared.ts';
import { normal } from './distributions/normal.ts';
import { type KendallTau, kendallTau } from './kendallTau.ts';
import { mean } from './mean.ts';
import { type Numbers, present } from './numbers.ts';
import { sd } from './sd.ts';

export interface Repeatability {
  /** How many subjects were measured at least twice, and how many readings those are. */
  readonly subjects: number;
  readonly n: number;
  /** Readings left out: missing ones, and those of subjects measured only once. */
  readonly missing: number;
  readonly df: number;
  /** The standard deviation of one reading about its subject's true value: the technical error of measurement. */
  readonly withinSd: number;
  /** Limits of `withinSd`. */
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
  /** The standard error of `withinSd` as a share of it, 1 / √(2 df). */
  readonly relativeSe: number;
  /** How far a reading lies from the true value, at most, in 95 of 100: 1.96 `withinSd`. */
  readonly error95: number;
  /** How far two readings of one subject lie apart, at most, in 95 of 100: the smallest change that is more than error. */
  readonly coefficient: number;
  /** `withinSd` in percent of the mean of all readings. */
  readonly percent: number;
  /** The root mean square of each subject's own standard deviation over its mean. */
  readonly coefficientOfVariation: number;
  /** The standard deviation of the subjects' true values, 0 where the readings show none. */
  readonly betweenSd: number;
  /** Whether the readings spread more where they are larger: the subjects' standard deviations against their means. */
  readonly spreadOnMean: KendallTau;
}

/**
 * How well a measurement repeats, from several readings of each of several subjects.
 * @param matrix one row a subject, its readings in any one unit, as many as there are; missing ones are left out
 * @param level the level of the limits, 0.95 where not given
 * @returns standard deviations and differences in the unit of the readings; NaN where no subject was measured twice
 * @source Bland & Altman 1996, BMJ 312:1654 (corrected 313:744) and BMJ 313:41; Dahlberg 1940, Statistical Methods for
 *   Medical and Biological Students, whose √(Σd² / 2n) is `withinSd` where there are two readings each
 * @example repeatability([[1, 3], [5, 5], [8, 9]]).withinSd // 0.9128709291752769
 */
export function repeatability(matrix: readonly Numbers[], level = 0.95): Repeatability {
  const repeated = matrix.map(present).filter((readings) => readings.length > 1);
  const { n, between, within } = anova(repeated);
  const withinSd = Math.sqrt(within.ms);
  const perSubject = (n - repeated.reduce((sum, readings) => sum + readings.length ** 2, 0) / n) / between.df;
  const means = repeated.map(mean);
  const sds = repeated.map(sd);
  const limit = (p: number) => withinSd * Math.sqrt(within.df / chiSquared.quantile(p, within.df));
  return {
    subjects: repeated.length,
    n,
    missing: matrix.reduce((sum, readings) => sum + readings.length, 0) - n,
    df: within.df,
    withinSd,
    lower: limit((1 + level) / 2),
    upper: limit((1 - level) / 2),
    level,
    relativeSe: 1 / Math.sqrt(2 * within.df),
    error95: normal.quantile(0.975) * withinSd,
    coefficient: repeatabilityCoefficient(withinSd),
    percent: (100 * withinSd) / mean(Float64Array.from(repeated.flatMap((readings) => [...readings]))),
    coefficientOfVariation: Math.sqrt(mean(sds.map((spread, i) => (spread / means[i]) ** 2))),
    betweenSd: Math.sqrt(Math.max(0, (between.ms - within.ms) / perSubject)),
    spreadOnMean: kendallTau(means, sds),
  };
}

/**
 * The difference between two readings of one subject that is exceeded in 5 of 100: 1.96·√2 times the standard
 * deviation of one reading. A paper that prints the coefficient means this deviation:
 * coefficient / repeatabilityCoefficient(1).
 * @param withinSd the standard deviation of one reading, in any unit
 * @source Bland & Altman 1996, BMJ 312:1654
 * @example repeatabilityCoefficient(0.65) // 1.8016…
 */
export function repeatabilityCoefficient(withinSd: number): number {
  return normal.quantile(0.975) * Math.SQRT2 * withinSd;
}

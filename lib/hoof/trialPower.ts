import { detectableEffect, powerOfEstimate, slopeDesign } from '../stats/index.ts';

/** A trial as its power sees it; effects and deviations in the outcome's unit. */
export interface TrialDesign {
  readonly horses: number;
  /** Intervals of each horse, half of them shorter, half longer. */
  readonly intervals: number;
  /** Feet measured of each horse, 1 to 4. */
  readonly feet: number;
  /** Weeks. */
  readonly shorter: number;
  readonly longer: number;
  /** What a week more is thought to do. */
  readonly effect: number;
  /** How single changes of one foot scatter. */
  readonly changeSd: number;
}

/** The intervals of one horse in weeks: half of them shorter, half longer; the odd one shorter. */
export function trialWeeks({ intervals, shorter, longer }: TrialDesign): number[] {
  return Array.from({ length: intervals }, (_, i) => (i % 2 === 0 ? shorter : longer));
}

/**
 * The chance that a trial tells its effect from none, in closed form: every horse with the same design, feet alike in slope.
 * @returns the power, and the smallest effect of a week that 8 of 10 such trials would see
 * @example trialPower({ horses: 12, intervals: 6, feet: 4, shorter: 5, longer: 7, effect: 0.3, changeSd: 2 }).power // 0.7…
 */
export function trialPower(design: TrialDesign): { readonly power: number; readonly detectable: number } {
  const { horses, feet, effect, changeSd } = design;
  const { se, df } = slopeDesign({ groups: horses, units: feet, places: trialWeeks(design), residualSd: changeSd });
  return { power: powerOfEstimate(effect, se, df), detectable: detectableEffect(se, df, 0.8) };
}

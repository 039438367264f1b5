import { detectableEffect, powerOfEstimate, type SimulatedPower, simulatedPower, slopeDesign } from '../stats/index.ts';
import type { Progress } from './intervalModel.ts';

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

/** Half of the intervals shorter, half longer; the odd one shorter. */
function places({ intervals, shorter, longer }: TrialDesign): number[] {
  return Array.from({ length: intervals }, (_, i) => (i % 2 === 0 ? shorter : longer));
}

/**
 * The chance that a trial tells its effect from none, in closed form: every horse with the same design, feet alike in slope.
 * @returns the power, and the smallest effect of a week that 8 of 10 such trials would see
 * @example trialPower({ horses: 12, intervals: 6, feet: 4, shorter: 5, longer: 7, effect: 0.3, changeSd: 2 }).power // 0.7…
 */
export function trialPower(design: TrialDesign): { readonly power: number; readonly detectable: number } {
  const { horses, feet, effect, changeSd } = design;
  const { se, df } = slopeDesign({ groups: horses, units: feet, places: places(design), residualSd: changeSd });
  return { power: powerOfEstimate(effect, se, df), detectable: detectableEffect(se, df, 0.8) };
}

export interface TrialSimulation {
  readonly design: TrialDesign;
  /** What horses differ by in their slopes, as a standard deviation for one week. */
  readonly slopeSd: number;
  readonly replicates: number;
  readonly seed: number;
}

/** The power by simulation, where horses may differ in what a week does: the model of the page on longer intervals, refitted. */
export const trialTask = {
  name: 'trial power',
  run({ design, slopeSd, replicates, seed }: TrialSimulation, progress: Progress): SimulatedPower {
    const weeks = places(design);
    const middle = weeks.reduce((sum, value) => sum + value, 0) / weeks.length;
    const [horse, foot, within]: [string[], string[], number[]] = [[], [], []];
    for (let h = 0; h < design.horses; h++)
      for (let limb = 0; limb < design.feet; limb++)
        for (const value of weeks) {
          horse.push(`horse ${h}`);
          foot.push(`foot ${limb}`);
          within.push(value - middle);
        }
    const slopes = slopeSd > 0;
    return simulatedPower(
      { horse, foot, interval_within: Float64Array.from(within) },
      {
        response: 'change',
        fixed: ['interval_within'],
        random: [
          ...(design.feet > 1 ? [{ by: ['horse', 'foot'] }] : []),
          slopes ? { by: ['horse'], slopes: ['interval_within'], correlated: false } : { by: ['horse'] },
        ],
      },
      {
        term: 'interval_within',
        truth: {
          fixed: { interval_within: design.effect },
          random: [
            ...(design.feet > 1 ? [design.changeSd / 4] : []),
            design.changeSd / 4,
            ...(slopes ? [slopeSd] : []),
          ],
          residualSd: design.changeSd,
        },
        replicates,
        seed,
        onProgress: progress,
      },
    );
  },
};

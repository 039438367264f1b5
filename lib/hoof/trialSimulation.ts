import { type SimulatedPower, simulatedPower } from '../stats/index.ts';
import type { Progress } from './intervalModel.ts';
import { type TrialDesign, trialWeeks } from './trialPower.ts';

export interface TrialSimulation {
  readonly design: TrialDesign;
  /** What horses differ by in their slopes, as a standard deviation for one week. */
  readonly slopeSd: number;
  readonly replicates: number;
  readonly seed: number;
}

/** The power by simulation, where horses may differ in what a week does: the model of the page on longer intervals, refitted. */
export function trialSimulation(
  { design, slopeSd, replicates, seed }: TrialSimulation,
  progress: Progress,
): SimulatedPower {
  const weeks = trialWeeks(design);
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
        random: [...(design.feet > 1 ? [design.changeSd / 4] : []), design.changeSd / 4, ...(slopes ? [slopeSd] : [])],
        residualSd: design.changeSd,
      },
      replicates,
      seed,
      onProgress: progress,
    },
  );
}

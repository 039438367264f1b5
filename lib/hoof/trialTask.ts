import type { SimulatedPower } from '../stats/index.ts';
import type { Progress } from './intervalModel.ts';
import type { TrialSimulation } from './trialSimulation.ts';

/** `trialSimulation` for a place where it can take its time: its code is fetched by whoever does it, not by whoever asks. */
export const trialTask = {
  name: 'trial power',
  run: async (work: TrialSimulation, progress: Progress): Promise<SimulatedPower> =>
    (await import('./trialSimulation.ts')).trialSimulation(work, progress),
};

import type { Progress } from './intervalModel.ts';
import type { IntervalWork, IntervalWorkDone } from './intervalWork.ts';

/** `intervalWork` for a place where it can take its time: its code is fetched by whoever does it, not by whoever asks. */
export const intervalTask = {
  name: 'intervals',
  run: async (work: IntervalWork, progress: Progress): Promise<IntervalWorkDone> =>
    (await import('./intervalWork.ts')).intervalWork(work, progress),
};

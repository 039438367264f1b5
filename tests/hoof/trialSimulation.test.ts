import { describe, expect, it } from 'vitest';
import { type TrialDesign, trialPower } from '../../lib/hoof/trialPower.ts';
import { trialSimulation } from '../../lib/hoof/trialSimulation.ts';
import { trialTask } from '../../lib/hoof/trialTask.ts';

const design: TrialDesign = { horses: 8, intervals: 6, feet: 2, shorter: 5, longer: 7, effect: 0.4, changeSd: 1.5 };

describe('trialSimulation', () => {
  const run = (changes: Partial<TrialDesign>, slopeSd = 0, replicates = 400) =>
    trialSimulation({ design: { ...design, ...changes }, slopeSd, replicates, seed: 2 }, () => true);

  it('comes to the closed form where horses are alike in the effect', () => {
    const { lower, upper } = run({});
    const { power } = trialPower(design);
    expect(lower).toBeLessThan(power);
    expect(upper).toBeGreaterThan(power);
  });

  it('shows that horses which differ in the effect cost power', () => {
    expect(run({}, 0.5, 200).upper).toBeLessThan(run({}, 0, 200).power);
  });

  it('takes one foot a horse, and stops when told', () => {
    expect(run({ feet: 1 }, 0, 50).power).toBeLessThanOrEqual(run({ feet: 4 }, 0, 50).power);
    const stopped = trialSimulation({ design, slopeSd: 0, replicates: 100, seed: 1 }, (done) => done < 5);
    expect(stopped.replicates).toBe(5);
  });

  it('is what the task does', async () => {
    const work = { design, slopeSd: 0, replicates: 5, seed: 1 };
    expect(await trialTask.run(work, () => true)).toEqual(trialSimulation(work, () => true));
  });
});

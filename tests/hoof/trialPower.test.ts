import { describe, expect, it } from 'vitest';
import { type TrialDesign, trialPower, trialWeeks } from '../../lib/hoof/trialPower.ts';

const design: TrialDesign = { horses: 8, intervals: 6, feet: 2, shorter: 5, longer: 7, effect: 0.4, changeSd: 1.5 };

describe('trialPower', () => {
  it('rises with horses, intervals, feet, how far the intervals lie apart and the effect, and falls with the scatter', () => {
    const { power } = trialPower(design);
    const more: Partial<TrialDesign>[] = [{ horses: 9 }, { intervals: 8 }, { feet: 3 }, { longer: 8 }, { effect: 0.5 }];
    for (const change of more)
      expect(trialPower({ ...design, ...change }).power, JSON.stringify(change)).toBeGreaterThan(power);
    expect(trialPower({ ...design, changeSd: 2 }).power).toBeLessThan(power);
  });

  it('gives the effect that 8 of 10 trials would see', () => {
    const { detectable } = trialPower(design);
    expect(trialPower({ ...design, effect: detectable }).power).toBeCloseTo(0.8, 9);
  });

  it('tells nothing where the intervals are alike', () => {
    expect(trialPower({ ...design, longer: 5 }).detectable).not.toBeLessThan(1e6);
  });

  it('alternates shorter and longer intervals, the odd one shorter', () => {
    expect(trialWeeks({ ...design, intervals: 5 })).toEqual([5, 7, 5, 7, 5]);
  });
});

import { describe, expect, it } from 'vitest';
import { type IntervalEstimate, intervalEffect } from '../../lib/hoof/intervalModel.ts';
import { intervalTask } from '../../lib/hoof/intervalTask.ts';
import { intervalWork } from '../../lib/hoof/intervalWork.ts';
import { benjaminiHochberg } from '../../lib/stats/index.ts';
import { changed, intervalRows } from './intervalRows.ts';

const small = { horses: 5, visits: 5, limbs: ['LF'] };
const data = intervalRows({ ...small, within: 1, seed: 3 });
const angle = changed(intervalRows({ ...small, seed: 4 }), { outcome: 'toe_angle_deg', unit: 'deg', size: false });
const few = changed(intervalRows({ horses: 1 }), { outcome: 'frog_ratio', unit: '1' });
const options = { draws: 49 };
const onward = () => true;

describe('the work on intervals', () => {
  it('answers for the outcome alone where no others are asked about', () => {
    const { answer, several } = intervalWork({ data, others: [], options }, onward);
    expect(answer.kind).toBe('fitted');
    expect(several).toEqual([]);
  });

  it('gives every outcome its effect, with a p that allows for how many have one', async () => {
    const { several } = await intervalTask.run({ data, others: [few, angle], options }, onward);
    const effects = [data, angle].map((each) => intervalEffect(each) as IntervalEstimate);
    const adjusted = benjaminiHochberg(effects.map(({ p }) => p));
    expect(several).toEqual([
      { outcome: 'wall_level_mm', unit: 'mm', size: true, kind: 'fitted', within: effects[0], adjustedP: adjusted[0] },
      {
        ...{ outcome: 'frog_ratio', unit: '1', size: true, kind: 'too little' },
        reason: 'There are 12 intervals of 1 horse to go by; at least 20 intervals of 3 horses are needed',
      },
      {
        outcome: 'toe_angle_deg',
        unit: 'deg',
        size: false,
        kind: 'fitted',
        within: effects[1],
        adjustedP: adjusted[1],
      },
    ]);
    expect(adjusted[0]).toBeGreaterThan(effects[0].p);
  });
});

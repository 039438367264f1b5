// Before and after one trim: ten Dareh-Shori horses, fore feet, on radiographs (Iran J Vet Surg, article 79374).
import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { numbers } from '../hoof/feet.ts';
import { published } from './published.ts';

const at = (id: string, moment: string): number => published(`darehshori-${id}-${moment}`).value;
const moments = ['before', 'after'] as const;

const { feet } = herd({
  feet: {
    horse_id: { values: ['mean of ten', 'mean of ten'] },
    date: { values: ['2020-01-01', '2020-01-01'] },
    limb: { values: ['LF', 'LF'] },
    moment: { values: moments },
    toe_angle_deg: { values: Float64Array.from(moments, (moment) => at('toe-angle', moment)) },
    toe_length_mm: { unit: 'cm', values: Float64Array.from(moments, (moment) => at('wall-length', moment)) },
    foot_length_mm: { unit: 'cm', values: Float64Array.from(moments, (moment) => at('sole-length', moment)) },
  },
});

describe('the table of one trim', () => {
  const trimmed = (column: string): number => {
    const [before, after] = numbers(feet, column);
    return after - before;
  };

  it('the toe stood up by 1.35 degrees', () => {
    expect(trimmed('toe_angle_deg')).toBeCloseTo(1.35, 9);
  });

  it('the wall became 3.0 mm and the sole 6.8 mm shorter', () => {
    expect(trimmed('toe_length_mm')).toBeCloseTo(-3, 9);
    expect(trimmed('foot_length_mm')).toBeCloseTo(-6.8, 9);
  });

  it('the paper’s own derived angles do not follow from its means, so that only the measured ones may be used', () => {
    const derived = moments.map((moment) => at('p3-angle', moment) - at('toe-angle', moment));
    expect(derived.map((value) => value.toFixed(2))).toEqual(['-1.40', '-0.80']);
    const printed = [-2.0, -1.65];
    derived.forEach((value, i) => {
      expect(Math.abs(value - printed[i])).toBeGreaterThan(0.5);
    });
  });
});

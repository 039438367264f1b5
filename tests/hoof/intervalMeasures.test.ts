import { describe, expect, it } from 'vitest';
import { intervalMeasures } from '../../lib/hoof/intervalMeasures.ts';

const of = (...names: string[]) => intervalMeasures(Object.fromEntries(names.map((name) => [name, { values: [] }])));

describe('the computed columns of an interval', () => {
  it('are the change of what it has the start and the end of, by the titles that people know', () => {
    expect(of('frog_ratio_start', 'frog_ratio_end', 'my_own_start_mm', 'my_own_end_mm', 'start_date', 'limb')).toEqual([
      {
        ...{ name: 'frog_ratio_change', title: 'Frog width to length, change' },
        about: 'The end of the interval minus its start.',
        formula: 'frog_ratio_end - frog_ratio_start',
      },
      {
        ...{ name: 'my_own_change_mm', title: 'my own, change' },
        about: 'The end of the interval minus its start.',
        formula: 'my_own_end_mm - my_own_start_mm',
      },
    ]);
  });

  it('are none of what has a start or an end only, or neither', () => {
    expect(of('toe_length_start_mm')).toEqual([]);
    expect(of('toe_length_end_mm')).toEqual([]);
    expect(of('limb', 'limb_endundefined')).toEqual([]);
  });

  it('are growth, drift and imbalance where their columns are there', () => {
    expect(of('toe_length_start_mm', 'toe_length_end_mm').map(({ name }) => name)).toEqual([
      'toe_length_change_mm',
      'toe_growth_mm_per_day',
    ]);
  });
});

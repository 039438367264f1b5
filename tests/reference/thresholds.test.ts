// The edges of the definitions as the men who proposed them print them: see hoof-published.csv, turner-* and adams-*.
import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { beyond, builtInRanges } from '../../lib/hoof/ranges.ts';
import { type Cells, columnsOf, numbers } from '../hoof/feet.ts';
import { published } from './published.ts';

/** On which side of its range the measure of one foot lies, by the number alone: its word, or inside. */
function called(name: string, cells: Cells): string {
  const { feet } = herd({ feet: columnsOf([{ horse_id: 'one', date: '2026-01-05', limb: 'LF', ...cells }]) });
  const [range] = builtInRanges.get(name)!;
  const side = beyond(range, numbers(feet, name)[0]);
  return side === 0 ? 'inside' : ((side < 0 ? range.below : range.above) ?? '');
}

describe('the edges of the published definitions', () => {
  it('heels are underrun beyond 5 degrees under the toe', () => {
    const limit = published('turner-underrun').value;
    const heel = (below: number): string =>
      called('toe_minus_heel_deg', { toe_angle_deg: 52, heel_angle_deg: 52 - below });
    expect([heel(limit - 0.5), heel(limit), heel(limit + 0.5)]).toEqual(['inside', 'inside', 'underrun']);
  });

  it('a frog under 0.67 of its length wide is contracted', () => {
    const limit = published('turner-contracted').value;
    const frog = (ratio: number): string => called('frog_ratio', { frog_width_mm: 100 * ratio, frog_length_mm: 100 });
    expect([frog(limit), frog(limit - 0.001)]).toEqual(['inside', 'contracted']);
  });

  it('heels 0.5 cm apart are sheared, a hair less are not', () => {
    const limit = published('turner-sheared').value * 10;
    const heels = (apart: number): string =>
      called('heel_level_mm', { medial_heel_mm: 40 + apart, lateral_heel_mm: 40 });
    expect([heels(limit), heels(-limit), heels(limit - 0.125), heels(0)]).toEqual([
      'sheared, inside high',
      'sheared, outside high',
      'inside',
      'inside',
    ]);
  });

  it('the axis is broken back below the pastern’s angle and forward above it, without tolerance', () => {
    const axis = (toe: number): string =>
      called('toe_minus_pastern_deg', { toe_angle_deg: toe, pastern_angle_deg: 52 });
    expect([axis(51.9), axis(52), axis(52.1)]).toEqual(['broken back', 'inside', 'broken forward']);
  });

  it('a front pair is uneven beyond 1.5 degrees', () => {
    const limit = published('hobbs-uneven').value;
    const [range] = builtInRanges.get('toe_angle_left_minus_right_deg')!;
    expect([limit, -limit].map((value) => beyond(range, value))).toEqual([0, 0]);
    expect(beyond(range, limit + 0.1)).toBeGreaterThan(0);
  });
});

describe('the guideline toe length for the weight', () => {
  const guide = (kg: number): number => {
    const feet = columnsOf([{ horse_id: 'one', date: '2026-01-05', limb: 'LF', weight_kg: kg }]);
    return numbers(herd({ feet }).feet, 'toe_guide_mm')[0];
  };
  const bands = [
    ['turner-toe-length-360-400', 360, 400],
    ['turner-toe-length-425-475', 425, 475],
    ['turner-toe-length-525-575', 525, 575],
  ] as const;

  it.each(bands)('%s holds from its first to its last kilogram', (id, from, to) => {
    const value = published(id).value * 10;
    for (const kg of [from, (from + to) / 2, to]) expect(guide(kg)).toBeCloseTo(value, 9);
  });

  it('is missing between the bands and outside them, where nothing was published', () => {
    for (const kg of [200, 359, 401, 424, 476, 524, 576, 700]) expect(guide(kg)).toBeNaN();
  });

  it('does not pretend to judge 8.7 cm at 411.4 kg, which lies in a gap, yet both neighbours call it too long, as its author did', () => {
    const [toe, weight] = [published('canto-toe-length').value * 10, published('canto-weight').value];
    expect(guide(weight)).toBeNaN();
    const over = (kg: number): string => called('toe_over_guide_mm', { toe_length_mm: toe, weight_kg: kg });
    expect([over(400), over(425)]).toEqual(['long for the weight', 'long for the weight']);
  });
});

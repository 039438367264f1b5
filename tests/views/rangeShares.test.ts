import { describe, expect, it } from 'vitest';
import { measures } from '../../lib/hoof/measures/index.ts';
import { builtInRanges } from '../../lib/hoof/ranges.ts';
import { rangeShares } from '../../lib/views/rangeShares.ts';
import { marks, number, plotted, table, words } from './plotted.ts';

const feet = table({
  limb: { values: ['LF', 'RF', 'LH', 'RH', 'LF'] },
  build: { values: ['riding', 'riding', '', 'gaited', 'gaited'] },
  frog_ratio: number([0.5, 0.66, 0.7, 0.6, Number.NaN], '1', 0.02),
  toe_over_guide_mm: number([10, 10, -3, 10, 10], 'mm', 1),
  toe_minus_heel_deg: number([9, 4, 4, 4, 4], 'deg'),
});

describe('rangeShares', () => {
  it('counts feet beyond a range by more than the error, beside published herds', () => {
    const chart = rangeShares(feet);
    // 0.5 and 0.6 are below 0.67 by more than 1.96 * 0.02, 0.66 is not; gaited feet have no range for toe length.
    expect(chart.summary).toContain('Frog width to length: 2 of 4 beyond, 1 can’t be told.');
    expect(chart.summary).toContain('Toe length against the guideline for the weight: 2 of 3 beyond, 0 can’t be told.');
    expect(chart.summary).toContain('Toe angle less heel angle: 0 of 5 beyond, 1 can’t be told.');
    expect(chart.title).toBe(
      'Toe length against the guideline for the weight: 2 of 3 feet beyond the range here; in published herds 90 percent',
    );
  });

  it('draws a diamond for every published herd', () => {
    const shown = ['frog_ratio', 'toe_over_guide_mm', 'toe_minus_heel_deg'];
    const herds = shown.flatMap(
      (name) => builtInRanges.get(name)?.flatMap((range) => range.publishedOutside ?? []) ?? [],
    );
    const picture = plotted(rangeShares(feet));
    expect(marks(picture, 'dot')).toHaveLength(herds.length);
    expect(picture.querySelector('g[aria-label="dot"] title')?.textContent).toMatch(/^\d+ of \d+ in a published herd/);
    expect(words(picture)).toContain('Frog width to length: 2 of 4');
  });

  it('orders the ranges by the share beyond them', () => {
    const order = words(plotted(rangeShares(feet), 330)).filter((word) => / of \d+$/.test(word));
    expect(order).toEqual([
      'Toe length against the guideline for the weight: 2 of 3',
      'Frog width to length: 2 of 4',
      'Toe angle less heel angle: 0 of 5',
    ]);
  });

  it('uses the reader’s own ranges in place of ours', () => {
    const own = new Map([['frog_ratio', [{ atLeast: 0.4, source: 'own', firmness: 'from memory' as const }]]]);
    expect(rangeShares(feet, { ranges: own }).title).toBe('Frog width to length: 0 of 4 feet beyond the range here');
  });

  it('has no score and nothing to draw where no range holds', () => {
    const chart = rangeShares(feet, { rows: [] });
    expect(chart.title).toBe('No range holds for a measured foot');
    plotted(chart);
  });

  it('knows every measure that has ranges', () => {
    const names = new Set(measures.map(({ name }) => name));
    for (const name of builtInRanges.keys()) expect(names.has(name), name).toBe(true);
  });
});

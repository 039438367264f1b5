import { describe, expect, it } from 'vitest';
import { measures } from '../../lib/hoof/measures/index.ts';
import { builtInRanges } from '../../lib/hoof/ranges.ts';
import { rangeShares, shareChart } from '../../lib/views/rangeShares.ts';
import { marks, number, plotted, table, words } from './plotted.ts';

const occasions = table({
  horse_id: { values: ['A', 'A', 'A', 'B', 'B', 'A'] },
  limb: { values: ['LF', 'RF', 'LH', 'RH', 'LF', 'LF'] },
  date: { kind: 'date', values: Float64Array.of(9, 9, 9, 9, 9, 2) },
  moment: { values: Array(6).fill('before') },
  build: { values: ['riding', 'riding', 'riding', 'gaited', 'gaited', 'riding'] },
  frog_ratio: number([0.5, 0.66, 0.7, 0.6, Number.NaN, 0.3], '1', 0.02),
  toe_over_guide_mm: number([10, 10, -3, 10, 10, 10], 'mm', 1),
  toe_minus_heel_deg: number([9, 4, 4, 4, 4, 9], 'deg'),
});

describe('rangeShares', () => {
  it('counts each foot once, beyond a range by more than the error, beside published herds', () => {
    const chart = rangeShares(occasions);
    // 0.5 and 0.6 are below 0.67 by more than 1.96 * 0.02, 0.66 is not; gaited feet have no range for toe length.
    expect(chart.summary).toContain('Frog width to length: 2 of 4 beyond, 1 can’t be told.');
    expect(chart.summary).toContain('Toe length for the weight: 2 of 3 beyond, 0 can’t be told.');
    expect(chart.summary).toContain('Toe angle less heel angle: 0 of 5 beyond, 1 can’t be told.');
    expect(chart.title).toBe(
      'Toe length for the weight: 2 of 3 feet beyond the range here; in published herds 90 percent',
    );
    expect(chart.caption).toContain('1 value without a measurement left out.');
  });

  it('draws a diamond for every published herd', () => {
    const shown = ['frog_ratio', 'toe_over_guide_mm', 'toe_minus_heel_deg'];
    const herds = shown.flatMap(
      (name) => builtInRanges.get(name)?.flatMap((range) => range.publishedOutside ?? []) ?? [],
    );
    const picture = plotted(rangeShares(occasions));
    expect(marks(picture, 'dot')).toHaveLength(herds.length);
    expect(picture.querySelector('g[aria-label="dot"] title')?.textContent).toMatch(/^\d+ of \d+ in a published herd/);
  });

  it('orders the ranges by the share beyond them', () => {
    const order = words(plotted(rangeShares(occasions), 330)).filter((word) => / of \d+$/.test(word));
    expect(order).toEqual([
      'Toe length for the weight: 2 of 3',
      'Frog width to length: 2 of 4',
      'Toe angle less heel angle: 0 of 5',
    ]);
  });

  it('uses the reader’s own ranges in place of ours, each end apart where they differ', () => {
    const range = { source: 'own', firmness: 'from memory' as const };
    const own = new Map([
      [
        'frog_ratio',
        [
          { atLeast: 0.4, when: { end: 'front' as const }, ...range },
          { atLeast: 0.65, when: { end: 'hind' as const }, ...range },
        ],
      ],
    ]);
    const chart = rangeShares(occasions, { ranges: own });
    expect(chart.title).toBe('Frog width to length (hind): 1 of 2 feet beyond the range here');
    expect(words(plotted(chart))).toContain('Frog width to length (front): 0 of 2');
  });

  it('draws nothing where no range holds', () => {
    const chart = rangeShares(occasions, { ranges: new Map() });
    expect(chart.title).toBe('No range holds for a measured foot');
    plotted(chart);
  });

  it('draws shares that were counted by the number alone as such', () => {
    const [measure] = measures.filter(({ name }) => name === 'frog_ratio');
    const [range] = builtInRanges.get('frog_ratio')!;
    const chart = shareChart([{ measure, range, of: 40, outside: 10, missing: 2 }]);
    expect(chart.title).toMatch(/^Frog width to length: 10 of 40 readings outside the range here; in published herds/);
    expect(chart.summary).toBe('Frog width to length: 10 of 40 readings outside.');
    expect(chart.caption).toContain('by the number alone');
    expect(chart.caption).not.toContain('Solid');
    expect(words(plotted(chart))).toContain('Frog width to length: 10 of 40');
  });
});

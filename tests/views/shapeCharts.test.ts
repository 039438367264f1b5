import { describe, expect, it } from 'vitest';
import { limbs } from '../../lib/hoof/limbs.ts';
import { shapeDistributions } from '../../lib/views/shapeDistributions.ts';
import { shapeRatios } from '../../lib/views/shapeRatios.ts';
import { grounds, roles } from '../../lib/views/theme.ts';
import { hostile, marks, number, plotted, table, words } from './plotted.ts';

/** Two horses with all feet, one without hind feet, and a row without a value. */
const feet = table({
  horse_id: { values: ['A', 'A', 'A', 'A', 'B', 'B', 'B', 'B', 'C', 'C', 'C'] },
  limb: { values: [...limbs, ...limbs, 'LF', 'RF', 'LH'] },
  width_to_length: number([1, 1.02, 0.9, 0.92, 0.9, 0.9, 0.93, 0.91, 1, 1, Number.NaN], '1', 0.01),
  frog_ratio: number([0.6, 0.7, 0.6, 0.7, 0.5, 0.5, 0.5, 0.5, 0.8, 0.8, Number.NaN]),
  foot_width_mm: number([130, 130, 120, 120, 125, 125, 118, 118, 120, 120, Number.NaN], 'mm', 1),
});

describe('shapeRatios', () => {
  it('counts the horses whose front feet are the rounder, and those beyond the error', () => {
    const chart = shapeRatios(feet);
    expect(chart.title).toBe(
      'Front feet are rounder than hind feet in 1 of 2 horses, in 1 by more than the error of measuring',
    );
    expect(chart.caption).toContain('1 foot without a measurement left out.');
    expect(chart.summary).toBe('Foot width to length, one line a horse. The median is 0.96 in front and 0.92 behind.');
  });

  it('says nothing of the error where it is not known', () => {
    expect(shapeRatios(feet, { column: 'frog_ratio' }).title).toBe(
      'The frog is wider for its length in front than behind in 0 of 2 horses',
    );
  });

  it('draws a filled dot for the front and a hollow one for the hind feet of every horse that has both', () => {
    const picture = plotted(shapeRatios(feet));
    const dots = marks(picture, 'dot');
    expect(dots.map((dot) => dot.getAttribute('fill'))).toEqual([roles.front, grounds.card, roles.front, grounds.card]);
    expect(marks(picture, 'link')).toHaveLength(2);
    expect(words(picture)).toEqual(expect.arrayContaining(['front', 'hind', 'A', 'B']));
    expect(words(picture)).not.toContain('C');
  });

  it('orders the horses by the difference of front and hind', () => {
    const names = words(plotted(shapeRatios(feet))).filter((word) => word === 'A' || word === 'B');
    expect(names).toEqual(['A', 'B']);
  });

  it('says so where nothing can be compared', () => {
    const chart = shapeRatios(feet, { rows: [8, 9] });
    expect(chart.title).toBe('Foot width to length: no horse has both ends measured');
    plotted(chart);
    expect(shapeRatios(feet, { rows: [] }).title).toBe(chart.title);
  });

  it('writes the axis and the words in the reader’s units', () => {
    const chart = shapeRatios(feet, { column: 'foot_width_mm', units: { length: 'in', mass: 'lb' } });
    expect(words(plotted(chart))).toContain('Foot width (in)');
    expect(chart.summary).toContain(' in in front');
  });

  it('takes any name of a horse and any column as the text they are', () => {
    const horses = hostile.flatMap((name) => [name, name, name, name]);
    const odd = table({
      horse_id: { values: horses },
      limb: { values: hostile.flatMap(() => limbs) },
      constructor: number(horses.map((_, row) => 1 + (row % 4))),
    });
    const picture = plotted(shapeRatios(odd, { column: 'constructor' }));
    expect(picture.outerHTML).not.toContain('<script');
    expect(words(picture)).toEqual(expect.arrayContaining(['__proto__', '=1+1', 'a very long name …']));
  });

  it('draws the sixty largest differences of a large herd', () => {
    const horses = Array.from({ length: 400 }, (_, row) => `horse ${Math.floor(row / 4)}`);
    const large = table({
      horse_id: { values: horses },
      limb: { values: horses.map((_, row) => limbs[row % 4]) },
      width_to_length: number(horses.map((_, row) => 1 + (row % 4 < 2 ? row / 4000 : 0))),
    });
    const chart = shapeRatios(large);
    expect(chart.caption).toContain('The 60 largest differences of 100 horses.');
    const picture = plotted(chart);
    expect(marks(picture, 'dot')).toHaveLength(120);
    expect(words(picture)).toContain('horse 99');
    expect(words(picture)).not.toContain('horse 39');
  });
});

describe('shapeDistributions', () => {
  it('names the medians of both ends', () => {
    expect(shapeDistributions(feet).title).toBe(
      'Foot width to length: half of the front feet are below 1.00, half of the hind feet below 0.92',
    );
  });

  it('counts every measured foot once in the bars', () => {
    const picture = plotted(shapeDistributions(feet));
    const heights = marks(picture, 'rect')
      .flatMap((facet) => [...facet.children])
      .map((bar) => Number(bar.getAttribute('height')));
    expect(heights.length).toBeGreaterThan(3);
    expect(words(picture)).toEqual(expect.arrayContaining(['LF', 'RF', 'LH', 'RH', 'Foot width to length']));
  });

  it('shows the limit of a range and counts the feet outside it', () => {
    const chart = shapeDistributions(feet, { column: 'frog_ratio' });
    expect(chart.caption).toContain('6 feet of 10 lie outside 0.67.');
    expect(words(plotted(chart))).toContain('limit 0.67');
  });

  it('uses the reader’s own ranges', () => {
    const own = new Map([['frog_ratio', [{ atLeast: 0.55, source: 'own', firmness: 'from memory' as const }]]]);
    expect(shapeDistributions(feet, { column: 'frog_ratio', ranges: own }).caption).toContain(
      '4 feet of 10 lie outside 0.55.',
    );
  });

  it('draws nothing of nothing', () => {
    const chart = shapeDistributions(feet, { rows: [10] });
    expect(chart.title).toBe('Foot width to length: nothing measured');
    expect(chart.caption).toBe('1 foot without a measurement left out.');
    plotted(chart);
  });
});

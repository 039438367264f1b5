import { describe, expect, it } from 'vitest';
import { Sheet } from '../../lib/sheet/sheet.ts';
import { chosenChart } from '../../lib/views/chosenChart.ts';
import { plotted } from './plotted.ts';

const sheet = Sheet.from({
  horse_id: { values: ['A', 'A', 'B', 'B', 'B'], title: 'Horse' },
  date: { kind: 'date', values: Float64Array.of(100, 200, 100, 200, 300) },
  toe: { unit: 'mm', values: Float64Array.of(80, 82, 90, 94, Number.NaN), title: 'Toe' },
  heel: { unit: 'mm', values: Float64Array.of(40, 39, 38, 36, 30), title: 'Heel' },
  shod: { kind: 'boolean', values: Float64Array.of(1, 1, 0, 0, Number.NaN), title: 'Shod' },
});

describe('chosenChart', () => {
  it('says how far groups lie apart at the median, and counts rows without a value', () => {
    const chart = chosenChart(sheet, { kind: 'spread', column: 'toe', by: 'horse_id' });
    // Medians of 80, 82 and of 90, 94.
    expect(chart.title).toBe('Toe: from 81.0 mm (A) to 92.0 mm (B) at the median by horse');
    expect(chart.caption).toContain('1 row without a measurement left out.');
    expect(plotted(chart).querySelectorAll('[aria-label=dot] circle')).toHaveLength(4);
  });

  it('names yes and no, and rows of which it isn’t known', () => {
    const chart = chosenChart(sheet, { kind: 'spread', column: 'heel', by: 'shod' });
    expect(chart.summary).toBe('Heel, medians: yes 39.5 mm of 2, no 37.0 mm of 2, not known 30.0 mm of 1.');
  });

  it('says which way two columns go together, and that this is no test', () => {
    const chart = chosenChart(sheet, { kind: 'against', column: 'toe', other: 'heel' });
    // Every pair of the four complete rows is in opposite order.
    expect(chart.title).toBe('Toe against heel: larger goes with smaller (tau -1.00)');
    expect(chart.caption).toContain('this is no test');
  });

  it('draws over the table’s dates', () => {
    const chart = chosenChart(sheet, { kind: 'over time', column: 'toe', by: 'horse_id' });
    expect(chart.title).toContain('later goes with higher');
    expect(chart.caption).toContain('filled circle: A; hollow square: B.');
  });

  it('shows lengths in the reader’s unit', () => {
    const chart = chosenChart(sheet, { kind: 'spread', column: 'toe', units: { length: 'cm', mass: 'kg' } });
    expect(chart.title).toBe('Toe: 8.60 cm at the median of 4 rows');
  });

  it('has words in place of a picture of nothing, and refuses words as numbers', () => {
    const empty = Sheet.from({ toe: { unit: 'mm', values: Float64Array.of(Number.NaN) } });
    expect(chosenChart(empty, { kind: 'spread', column: 'toe' }).title).toBe('toe: no row has a value to draw');
    expect(() => chosenChart(sheet, { kind: 'spread', column: 'horse_id' })).toThrow('horse_id holds words');
    expect(() => chosenChart(empty, { kind: 'over time', column: 'toe' })).toThrow('no column of dates');
  });
});

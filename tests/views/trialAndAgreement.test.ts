import { describe, expect, it } from 'vitest';
import { type IntervalFit, intervalModel } from '../../lib/hoof/intervalModel.ts';
import { observerAgreement, repeatabilities } from '../../lib/hoof/repeatAgreement.ts';
import { agreement } from '../../lib/views/agreement.ts';
import { intervalEffect } from '../../lib/views/intervalEffect.ts';
import { powerCurve } from '../../lib/views/powerCurve.ts';
import { repeatsWorth } from '../../lib/views/repeatsWorth.ts';
import { residualQuantiles } from '../../lib/views/residualQuantiles.ts';
import { withoutEachHorse } from '../../lib/views/withoutEachHorse.ts';
import { changed, intervalRows } from '../hoof/intervalRows.ts';
import { hostile, marks, number, plotted, table, words } from './plotted.ts';

const inches = { length: 'in', mass: 'lb' } as const;
const data = intervalRows({ within: 0.6, horses: 6 });
const fit = intervalModel(data, { draws: 99 }) as IntervalFit;

describe('intervalEffect', () => {
  it('draws every interval, a line a horse, and the fitted effect with its band', () => {
    const picture = plotted(intervalEffect(data, fit));
    expect(marks(picture, 'dot')).toHaveLength(72);
    expect(marks(picture, 'link')).toHaveLength(6);
    expect(marks(picture, 'area')).toHaveLength(1);
    expect(marks(picture, 'line')).toHaveLength(1);
    expect(intervalEffect(data, fit).title).toMatch(/^A week longer went with/);
  });

  it('shows inches when asked, in words and axis alike', () => {
    const chart = intervalEffect(data, fit, { units: inches });
    expect(chart.title).toContain(' in more');
    expect(words(plotted(chart))).toContain('Change (in)');
  });

  it('thins out what would fall on one another in a large herd', () => {
    const large = intervalRows({ horses: 60, visits: 20, noise: 2 });
    const many = intervalModel(large, { draws: 1 }) as IntervalFit;
    const drawn = marks(plotted(intervalEffect(large, many)), 'dot').length;
    expect(drawn).toBeLessThan(2401);
    expect(drawn).toBeGreaterThan(800);
  });

  it('takes names of horses as they are', () => {
    const horse = data.horse.map((name) => hostile[Number(name.slice(1)) % hostile.length]);
    const named = changed(data, { horse });
    const answer = intervalModel(named, { draws: 9 }) as IntervalFit;
    expect(plotted(intervalEffect(named, answer)).querySelector('script')).toBeNull();
    expect(words(plotted(withoutEachHorse(named, answer)))).toContain('__proto__');
  });
});

describe('withoutEachHorse and residualQuantiles', () => {
  it('name every horse, and hold it against all of them', () => {
    const chart = withoutEachHorse(data, fit);
    const picture = plotted(chart, 340);
    expect(marks(picture, 'dot')).toHaveLength(6);
    expect(words(picture)).toContain('h3');
    expect(chart.title).toMatch(/^No horse moves the effect by more than \d\.\d of its standard error$/);
    const one = { ...fit, checks: { ...fit.checks, without: [] } };
    expect(withoutEachHorse(data, one).title).toBe('Too few horses to leave one out');
  });

  it('say whether what is left over is normal', () => {
    expect(residualQuantiles(fit, 'mm').title).toMatch(/lies along the line/);
    const bent = { ...fit, checks: { ...fit.checks, residuals: { ...fit.checks.residuals, straightness: 0.9 } } };
    expect(residualQuantiles(bent, 'mm').title).toMatch(/bends away/);
    expect(marks(plotted(residualQuantiles(fit, 'mm'), 340), 'dot').length).toBeGreaterThan(60);
  });
});

describe('agreement and repeatsWorth', () => {
  const feet = table({
    horse_id: { values: ['a', 'a', 'b', 'b', 'c', 'c', 'd', 'd'] },
    observer: { values: ['Ida', '<b>', 'Ida', '<b>', 'Ida', '<b>', 'Ida', '<b>'] },
    toe_length_mm: number([80, 81, 75, 77, 90, 90, 85, 88], 'mm'),
  });

  it('draw each pair, the bias, the limits and their bands', () => {
    const chart = agreement(observerAgreement(feet, 'toe_length_mm')!);
    const picture = plotted(chart);
    expect(marks(picture, 'dot')).toHaveLength(4);
    expect(marks(picture, 'rect')).toHaveLength(3);
    expect(chart.title).toMatch(
      /^Toe length: 95 of 100 differences between <b> and Ida lie between −1\.\d+ mm and \+4\.\d+ mm$/,
    );
    expect(picture.querySelector('b')).toBeNull();
  });

  it('say so where one pair is all there is', () => {
    const one = table({
      horse_id: { values: ['a', 'a'] },
      toe_length_mm: number([80, 81], 'mm'),
    });
    const chart = agreement(observerAgreement(one, 'toe_length_mm')!);
    expect(chart.title).toMatch(/one pair of readings says nothing/);
    plotted(chart);
  });

  it('show what averaging gains', () => {
    const [row] = repeatabilities(feet, ['toe_length_mm']);
    const chart = repeatsWorth(row);
    expect(marks(plotted(chart), 'dot')).toHaveLength(6);
    const [one, two, four] = [...chart.title.matchAll(/(\d+\.\d) mm/g)].map(([, value]) => Number(value));
    expect(Math.abs(one / two - Math.SQRT2)).toBeLessThan(0.1);
    expect(Math.abs(one / four - 2)).toBeLessThan(0.1);
    expect(repeatsWorth(row, { units: inches }).title).toContain(' in');
  });
});

describe('powerCurve', () => {
  const design = { horses: 8, intervals: 6, feet: 4, shorter: 5, longer: 7, effect: 0.3, changeSd: 1.6 };

  it('draws a line for each number of intervals, and says how many horses are enough', () => {
    const chart = powerCurve(design, 'mm');
    const picture = plotted(chart);
    expect(marks(picture, 'line')).toHaveLength(4);
    expect(words(picture).filter((word) => word.endsWith('intervals'))).toHaveLength(4);
    expect(chart.title).toBe('10 horses with 6 intervals each would show 0.3 mm a week in 80 of 100 such trials');
  });

  it('says so where no such number of horses would do', () => {
    expect(powerCurve({ ...design, effect: 0.01 }, 'mm').title).toMatch(
      /^Even 24 horses with 6 intervals each would seldom show/,
    );
  });

  it('stays whole where the intervals are alike and nothing can be told', () => {
    plotted(powerCurve({ ...design, longer: 5 }, 'mm'));
  });
});

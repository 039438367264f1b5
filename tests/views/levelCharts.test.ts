import { describe, expect, it } from 'vitest';
import { limbs } from '../../lib/hoof/limbs.ts';
import { leftAgainstRight } from '../../lib/views/leftAgainstRight.ts';
import { levelDistribution } from '../../lib/views/levelDistribution.ts';
import { hostile, marks, number, plotted, table, words } from './plotted.ts';

const feet = table({
  horse_id: { values: ['A', 'A', 'A', 'A', 'A', 'A', 'B', 'B', 'B'] },
  limb: { values: ['LF', 'RF', 'LF', 'RF', 'LH', 'RH', 'LF', 'RF', 'LH'] },
  moment: { values: ['before', 'before', 'after', 'after', '', '', 'before', 'before', 'after'] },
  wall_level_mm: number([4, -1, 0.5, -0.5, 2.5, 2.1, 6, 1, Number.NaN], 'mm', 1),
  heel_level_mm: number([1, 2, 3, 4, 5, 6, 7, 8, 9], 'mm'),
});

describe('levelDistribution', () => {
  it('counts, moment by moment, what lies beyond the error of measuring', () => {
    expect(levelDistribution(feet).title).toBe(
      'Level from the front: beyond the error of measuring in 2 of 4 before the work, 0 of 2 after the work, 2 of 2 between visits',
    );
  });

  it('names the band, the sign and what was left out', () => {
    const { caption } = levelDistribution(feet);
    expect(caption).toContain('to the right of zero the inside is higher');
    expect(caption).toContain('2.0 mm either way');
    expect(caption).toContain('1 row without a measurement left out.');
  });

  it('gives the median of every limb and moment', () => {
    expect(levelDistribution(feet).summary).toBe(
      'Medians: left fore before the work +5.0 mm, left fore after the work +0.5 mm, right fore before the work 0.0 mm, right fore after the work −0.5 mm, left hind between visits +2.5 mm, right hind between visits +2.1 mm.',
    );
  });

  it('draws a line for every measurement, the middle half and the median of every group, and the band in every limb', () => {
    const picture = plotted(levelDistribution(feet));
    const ticks = [...picture.querySelectorAll('g[aria-label="tick"] line')];
    expect(ticks).toHaveLength(8 + 6);
    expect(picture.querySelectorAll('g[aria-label="bar"] rect')).toHaveLength(6);
    expect(picture.querySelectorAll('g[aria-label="rect"] rect')).toHaveLength(4);
    expect(words(picture)).toEqual(
      expect.arrayContaining(['LF', 'RF', 'LH', 'RH', 'before the work', 'between visits']),
    );
    expect(words(picture)).toContain('Level from the front, inside minus outside (mm)');
  });

  it('puts zero in the middle, so that both sides weigh alike', () => {
    const picture = plotted(levelDistribution(feet));
    const zero = [...picture.querySelectorAll('g[aria-label="rule"] line')].at(-1);
    expect(Number(zero?.getAttribute('x1'))).toBeCloseTo((128 + (640 - 16)) / 2, 0);
  });

  it('draws equal measurements once, so that a large herd stays light', () => {
    const rows = Array.from({ length: 5000 }, (_, row) => row);
    const large = table({
      limb: { values: rows.map(() => 'LF') },
      wall_level_mm: number(
        rows.map((row) => (row % 50) / 10),
        'mm',
        1,
      ),
    });
    const ticks = [...plotted(levelDistribution(large)).querySelectorAll('g[aria-label="tick"] line')];
    expect(ticks).toHaveLength(50 + 1);
  });

  it('says that the error is not known instead of drawing a band', () => {
    const chart = levelDistribution(feet, { column: 'heel_level_mm' });
    expect(chart.title).toBe('Level from behind: the middle of all measurements is +5.0 mm');
    expect(chart.caption).toContain('The error of measuring is not known.');
    expect(marks(plotted(chart), 'rect')).toEqual([]);
  });

  it('works in inches and on a phone', () => {
    const picture = plotted(levelDistribution(feet, { units: { length: 'in', mass: 'lb' } }), 320);
    expect(words(picture)).toContain('Level from the front, inside minus outside (in)');
  });

  it('draws nothing of nothing', () => {
    expect(levelDistribution(feet, { rows: [8] }).title).toBe('Level from the front: nothing measured');
    plotted(levelDistribution(feet, { rows: [] }));
  });
});

describe('leftAgainstRight', () => {
  it('counts the pairs that differ by more than their error and leaves a lone foot out', () => {
    const chart = leftAgainstRight(feet);
    // A front: 2.25 against −0.75, each ± 0.71; A hind: 2.5 against 2.1, each ± 1; B front: 6 against 1, each ± 1.
    expect(chart.title).toBe(
      'Level from the front: left and right differ by more than the error of measuring in 2 of 3 pairs',
    );
    expect(chart.summary).toContain('The left foot has the larger value in 3 of 3 pairs.');
    expect(leftAgainstRight(feet, { column: 'heel_level_mm' }).caption).toContain(
      '1 foot without its other one left out.',
    );
  });

  it('draws one mark a pair, the left foot up and the right foot across, and names those that differ', () => {
    const picture = plotted(leftAgainstRight(feet));
    expect(marks(picture, 'dot')).toHaveLength(3);
    expect(words(picture)).toEqual(expect.arrayContaining(['Left foot (mm)', 'Right foot (mm)', 'B']));
    // Equal scales: what is farther from the diagonal upwards has the larger left foot.
    const place = (dot: Element) => [Number(dot.getAttribute('cx')), Number(dot.getAttribute('cy'))];
    const [aFront, , bFront] = marks(picture, 'dot').map(place);
    expect(bFront[0]).toBeGreaterThan(aFront[0]);
    expect(bFront[1]).toBeLessThan(aFront[1]);
  });

  it('says who is larger where the error is not known', () => {
    expect(leftAgainstRight(feet, { column: 'heel_level_mm' }).title).toBe(
      'Level from behind: the left foot has the larger value in 0 of 3 pairs',
    );
  });

  it('escapes any name of a horse', () => {
    const odd = table({
      horse_id: { values: hostile.flatMap((name) => [name, name]) },
      limb: { values: hostile.flatMap(() => limbs.slice(0, 2)) },
      wall_level_mm: number(
        hostile.flatMap((_, row) => [row * 5, -row]),
        'mm',
        0.1,
      ),
    });
    const picture = plotted(leftAgainstRight(odd));
    expect(picture.outerHTML).not.toContain('<script');
  });

  it('draws nothing of nothing', () => {
    expect(leftAgainstRight(feet, { rows: [0] }).title).toBe('Level from the front: no pair of feet measured');
    plotted(leftAgainstRight(feet, { rows: [] }));
  });
});

import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { measureLines } from '../../lib/views/measureLines.ts';
import { columnsOf } from '../hoof/feet.ts';
import { plotted } from './plotted.ts';

const { occasions, ranges } = herd({
  feet: columnsOf([
    { horse_id: 'Fern', date: '2026-01-05', limb: 'LF', moment: 'before', medial_wall_mm: 50, lateral_wall_mm: 48 },
    { horse_id: 'Fern', date: '2026-03-02', limb: 'LF', moment: 'before', medial_wall_mm: 51, lateral_wall_mm: 48 },
    { horse_id: 'Fern', date: '2026-03-02', limb: 'RH', moment: 'after', medial_wall_mm: 50, lateral_wall_mm: 52 },
    { horse_id: 'Moss', date: '2026-03-02', limb: 'LF', moment: 'after', medial_wall_mm: 70, lateral_wall_mm: 48 },
  ]),
});

describe('measureLines', () => {
  const charts = measureLines(occasions, 'Fern', { ranges });
  const level = charts.find(({ name }) => name === 'over-time-wall-level-mm')!;

  it('gives a chart to each computed column that is known of the horse, and to no other', () => {
    expect(charts.map(({ name }) => name)).toEqual(['over-time-wall-level-mm', 'over-time-wall-level-percent']);
    expect(measureLines(occasions, 'Nobody', { ranges })).toEqual([]);
  });

  it('tells the latest value of each foot in its title', () => {
    expect(level.title).toBe('Level from the front: LF\u00a03.0, RH\u00a0−2.0 mm');
    expect(level.summary).toContain('3 values');
  });

  it('draws one mark a value and the limits of the range that holds for all', () => {
    const picture = plotted(level);
    expect(picture.querySelectorAll('[aria-label=dot] path')).toHaveLength(3);
    expect(level.caption).toContain('−5');
  });

  it('draws the same on paper, small, with only its first and last day named', () => {
    const { onPaper } = level;
    const paper = plotted({ ...level, options: onPaper! }, onPaper!.width);
    expect(paper.querySelectorAll('[aria-label=dot] path')).toHaveLength(3);
    const days = paper.querySelectorAll('[aria-label="x-axis tick label"] text');
    expect([...days].map(({ textContent }) => textContent)).toEqual(['Jan 26', 'Mar 26']);
  });

  it('keeps to one moment where asked', () => {
    const [after] = measureLines(occasions, 'Fern', { ranges, moment: 'after' });
    expect(after.title).toBe('Level from the front: RH\u00a0−2.0 mm');
  });

  it('follows the reader’s units', () => {
    const [inches] = measureLines(occasions, 'Fern', { ranges, units: { length: 'in', mass: 'kg' } });
    expect(inches.title).toContain('LF\u00a00.12, RH\u00a0−0.08 in');
  });
});

import { describe, expect, it } from 'vitest';
import { daysFromIso } from '../../lib/sheet/days.ts';
import { betweenVisits } from '../../lib/views/betweenVisits.ts';
import { intervalChanges } from '../../lib/views/intervalChange.ts';
import { intervalSlopes } from '../../lib/views/intervalSlopes.ts';
import { hostile, marks, number, plotted, table, words } from './plotted.ts';

const day = (iso: string) => daysFromIso(iso);
const dates = (...isos: string[]) => ({ kind: 'date' as const, values: Float64Array.from(isos, day) });

const intervals = table({
  horse_id: { values: ['A', 'A', 'A', 'B', 'B', 'C'] },
  limb: { values: ['LF', 'RH', 'LF', 'LF', 'LF', 'RF'] },
  start_date: dates('2026-01-01', '2026-01-01', '2026-02-05', '2026-01-10', '2026-02-21', '2026-01-01'),
  end_date: dates('2026-02-05', '2026-02-05', '2026-04-02', '2026-02-21', '2026-04-04', '2026-02-12'),
  compared: {
    values: ['after to before', 'after to before', 'after to before', 'before to before', 'before to before', ''],
  },
  toe_length_start_mm: number([80, 75, 79, 85, 86, Number.NaN], 'mm'),
  toe_length_end_mm: number([90, 80, 95, 86, 84, 80], 'mm'),
  toe_angle_start_deg: number([52, 50, 53, 50, 50, Number.NaN], 'deg'),
  toe_angle_end_deg: number([51, 50, 51.4, 50, 50, 50], 'deg'),
});

const visits = table({
  horse_id: { values: ['A', 'A', 'A', 'B', 'A'] },
  date: dates('2026-01-01', '2026-02-05', '2026-04-02', '2026-01-10', '2025-06-01'),
  work: { values: ['trim', 'shoe', 'none', 'trim', 'trim'] },
});

describe('intervalChanges', () => {
  it('gives the change a week of every interval with both ends and counts the others', () => {
    const { changes, missing, unit, title } = intervalChanges(intervals, 'toe_length_mm');
    expect(changes.map(({ slope }) => slope)).toEqual([2, 1, 2, 1 / 6, -1 / 3]);
    expect(changes.map(({ undisturbed }) => undisturbed)).toEqual([true, true, true, false, false]);
    expect({ missing, unit, title }).toEqual({ missing: 1, unit: 'mm', title: 'Toe length' });
  });
});

describe('betweenVisits', () => {
  const charts = betweenVisits(intervals, { visits });

  it('gives one chart a horse, each with its own median pace', () => {
    expect(charts.map(({ title }) => title)).toEqual([
      'A: +2.0 mm/week at the median of 3 intervals',
      'B: −0.1 mm/week at the median of 2 intervals compared at like moments',
      'C: no interval measured at both ends',
    ]);
  });

  it('draws one line a foot and interval, pale where only like moments compare', () => {
    const [a, b] = charts.map((chart) => plotted(chart, 360));
    expect(marks(a, 'link').map((line) => line.getAttribute('stroke-opacity') ?? '1')).toEqual(['1', '1', '1']);
    expect(marks(b, 'link').map((line) => line.getAttribute('stroke-opacity'))).toEqual(['0.4', '0.4']);
    expect(charts[1].caption).toContain('Pale lines compare like moments');
  });

  it('marks the farrier’s work inside the dates shown, and no visit without work', () => {
    const [a, b] = charts.map((chart) => plotted(chart, 360));
    expect(marks(a, 'rule')).toHaveLength(2);
    expect(marks(b, 'rule')).toHaveLength(1);
    expect(a.querySelector('g[aria-label="rule"] title')?.textContent).toBe('trim');
  });

  it('dashes the right side and names each limb behind its last point', () => {
    const a = plotted(charts[0], 360);
    const dashed = [...a.querySelectorAll('g[aria-label="link"][stroke-dasharray="5 3"]')];
    expect(dashed).toHaveLength(1);
    expect(
      words(a)
        .filter((word) => /^[LR][FH]$/.test(word))
        .sort(),
    ).toEqual(['LF', 'RH']);
  });

  it('gives all horses the same scales', () => {
    const ticks = charts.slice(0, 2).map((chart) => words(plotted(chart, 360)).filter((word) => /^\d+$/.test(word)));
    expect(ticks[0]).toEqual(ticks[1]);
  });

  it('names the horses as they are and escapes them', () => {
    const odd = betweenVisits(
      table({
        horse_id: { values: hostile },
        limb: { values: hostile.map(() => 'LF') },
        start_date: dates(...hostile.map(() => '2026-01-01')),
        end_date: dates(...hostile.map(() => '2026-02-05')),
        toe_length_start_mm: number(
          hostile.map(() => 80),
          'mm',
        ),
        toe_length_end_mm: number(
          hostile.map(() => 90),
          'mm',
        ),
      }),
    );
    expect(odd.map(({ title }) => title.split(': +2.0')[0])).toEqual(hostile);
    for (const chart of odd) expect(plotted(chart, 360).outerHTML).not.toContain('<script');
  });

  it('follows the reader’s units and only the rows that are asked for', () => {
    const [chart, ...others] = betweenVisits(intervals, { units: { length: 'cm', mass: 'kg' }, rows: [0, 1] });
    expect(others).toEqual([]);
    expect(words(plotted(chart, 360))).toContain('Toe length (cm)');
    expect(chart.title).toContain('cm/week');
  });

  it('gives nothing of nothing', () => {
    expect(betweenVisits(intervals, { rows: [] })).toEqual([]);
  });
});

describe('intervalSlopes', () => {
  it('compares the shorter half of the intervals with the longer one and leaves disturbed ones out', () => {
    const chart = intervalSlopes(intervals);
    expect(chart.title).toBe(
      'Toe angle: −0.10°/week at the median in intervals of 35 days, −0.20°/week in those of 56 days',
    );
    expect(chart.caption).toContain('2 intervals measured only at like moments, with work between them, left out.');
    expect(chart.caption).toContain('1 interval without a measurement left out.');
    expect(marks(plotted(chart), 'dot')).toHaveLength(3);
  });

  it('marks limbs by side and end, not by colour alone', () => {
    const picture = plotted(intervalSlopes(intervals));
    const shapes = [...picture.querySelectorAll('g[aria-label="dot"] path')].map((path) => path.getAttribute('d'));
    expect(new Set(shapes).size).toBe(2);
    const fills = [...picture.querySelectorAll('g[aria-label="dot"]')].map((group) => group.getAttribute('fill'));
    expect(new Set(fills).size).toBe(2);
  });

  it('shows a rate on its axis', () => {
    expect(words(plotted(intervalSlopes(intervals), 320))).toContain('Toe angle, change (°/week)');
  });

  it('draws nothing of nothing', () => {
    const chart = intervalSlopes(intervals, { rows: [3] });
    expect(chart.title).toBe('Toe angle: no interval measured from after the work to before the next');
    plotted(chart);
  });
});

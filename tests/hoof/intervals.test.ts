import { describe, expect, it } from 'vitest';
import { herd, intervalSheet } from '../../lib/hoof/herd.ts';
import { partName } from '../../lib/hoof/partName.ts';
import { type Cells, columnsOf, errorsOf, numbers, texts } from './feet.ts';

const foot: Cells = { horse_id: 'Bella', limb: 'LF' };
const [january, february, april] = ['2026-01-05', '2026-02-16', '2026-04-06'];

const intervalsOf = (feet: readonly Cells[], visits?: readonly Cells[]) =>
  herd({ feet: columnsOf(feet), visits: visits && columnsOf(visits) }).intervals;

describe('an interval', () => {
  it('runs from after the work at its start to before the work at its end', () => {
    const intervals = intervalsOf([
      { ...foot, date: january, moment: 'before', toe_length_mm: 90, toe_angle_deg: 49 },
      {
        ...foot,
        date: january,
        moment: 'after',
        toe_length_mm: 80,
        toe_angle_deg: 52,
        medial_wall_mm: 60,
        lateral_wall_mm: 61,
      },
      {
        ...foot,
        date: february,
        moment: 'before',
        toe_length_mm: 92.6,
        toe_angle_deg: 50.5,
        medial_wall_mm: 70,
        lateral_wall_mm: 68,
      },
      { ...foot, date: february, moment: 'after', toe_length_mm: 81, toe_angle_deg: 52 },
    ]);
    expect(intervals.rows).toBe(1);
    expect(texts(intervals, 'compared')).toEqual(['after to before']);
    expect(numbers(intervals, 'days')).toEqual([42]);
    expect(numbers(intervals, 'wall_level_start_mm')).toEqual([-1]);
    expect(numbers(intervals, 'wall_level_end_mm')).toEqual([2]);
    expect(numbers(intervals, 'wall_level_change_mm')).toEqual([3]);
    expect(numbers(intervals, 'wall_imbalance_change_mm')).toEqual([1]);
    expect(numbers(intervals, 'toe_growth_mm_per_day')[0]).toBeCloseTo(0.3, 12);
    expect(numbers(intervals, 'toe_angle_drift_deg_per_week')[0]).toBeCloseTo(-0.25, 12);
  });

  it('carries the errors of what was measured at both ends', () => {
    const intervals = intervalsOf([
      { ...foot, date: january, moment: 'after', toe_length_mm: 80 },
      { ...foot, date: january, moment: 'after', toe_length_mm: 82 },
      { ...foot, date: february, moment: 'before', toe_length_mm: 93 },
    ]);
    const [start, end] = [1.5 / Math.SQRT2, 1.5];
    expect(errorsOf(intervals, 'toe_length_start_mm')[0]).toBeCloseTo(start, 12);
    expect(errorsOf(intervals, 'toe_length_change_mm')[0]).toBeCloseTo(Math.hypot(start, end), 12);
    expect(errorsOf(intervals, 'toe_growth_mm_per_day')[0]).toBeCloseTo(Math.hypot(start, end) / 42, 12);
  });

  it('compares like moments where one end lacks its own, says so, and then speaks of no growth', () => {
    const before = { ...foot, moment: 'before', toe_angle_deg: 50 };
    const intervals = intervalsOf([
      { ...before, date: january, toe_length_mm: 90 },
      { ...before, date: february, toe_length_mm: 92 },
      { ...foot, limb: 'RF', date: january, moment: 'after', toe_length_mm: 80 },
      { ...foot, limb: 'RF', date: february, moment: 'after', toe_length_mm: 81 },
    ]);
    expect(texts(intervals, 'compared')).toEqual(['before to before', 'after to after']);
    expect(numbers(intervals, 'toe_length_change_mm')).toEqual([2, 1]);
    expect(numbers(intervals, 'toe_growth_mm_per_day')).toEqual([Number.NaN, Number.NaN]);
  });

  it('with unlike moments at its ends is kept, and nothing in it is compared', () => {
    const intervals = intervalsOf([
      { ...foot, date: january, moment: 'before', toe_length_mm: 90 },
      { ...foot, date: february, moment: 'after', toe_length_mm: 80 },
    ]);
    expect(texts(intervals, 'compared')).toEqual(['']);
    expect(numbers(intervals, 'days')).toEqual([42]);
    expect(numbers(intervals, 'toe_length_start_mm')).toEqual([Number.NaN]);
    expect(numbers(intervals, 'toe_length_end_mm')).toEqual([Number.NaN]);
    expect(numbers(intervals, 'toe_length_change_mm')).toEqual([Number.NaN]);
  });

  it('lies between every two days where nobody wrote moments or visits, and then growth is growth', () => {
    const intervals = intervalsOf([
      { ...foot, date: february, toe_length_mm: 92.6 },
      { ...foot, date: january, toe_length_mm: 80 },
    ]);
    expect(texts(intervals, 'compared')).toEqual(['between to between']);
    expect(numbers(intervals, 'days')).toEqual([42]);
    expect(numbers(intervals, 'toe_length_change_mm')[0]).toBeCloseTo(12.6, 12);
    expect(numbers(intervals, 'toe_growth_mm_per_day')[0]).toBeCloseTo(0.3, 12);
  });

  it('between two known visits compares what was measured on their days, and then growth is unknown', () => {
    const intervals = intervalsOf(
      [
        { ...foot, date: january, toe_length_mm: 80 },
        { ...foot, date: '2026-01-26', toe_length_mm: 88 },
        { ...foot, date: february, toe_length_mm: 81 },
      ],
      [
        { horse_id: 'Bella', date: january, work: 'trim', farrier: 'M. Alder' },
        { horse_id: 'Bella', date: february, work: 'trim' },
      ],
    );
    expect(numbers(intervals, 'toe_length_change_mm')).toEqual([1]);
    expect(numbers(intervals, 'toe_growth_mm_per_day')).toEqual([Number.NaN]);
    expect(texts(intervals, 'farrier')).toEqual(['M. Alder']);
    expect(texts(intervals, 'work')).toEqual(['trim']);
  });

  it('ends at work that nobody measured', () => {
    const feet = [
      { ...foot, date: january, moment: 'after', toe_length_mm: 80 },
      { ...foot, date: april, moment: 'before', toe_length_mm: 93 },
    ];
    const visit = { horse_id: 'Bella', date: february };
    expect(numbers(intervalsOf(feet), 'days')).toEqual([91]);
    const cut = intervalsOf(feet, [{ ...visit, work: 'trim' }]);
    expect(numbers(cut, 'days')).toEqual([42, 49]);
    expect(texts(cut, 'compared')).toEqual(['', '']);
    expect(numbers(intervalsOf(feet, [{ ...visit, work: 'none' }]), 'days')).toEqual([91]);
  });

  it('that nobody measured at either end is none', () => {
    const feet = [
      { ...foot, date: january, toe_length_mm: 80 },
      { ...foot, limb: 'RF', date: january },
    ];
    const visits = [january, february, april].map((date) => ({ horse_id: 'Bella', date, work: 'trim' }));
    const intervals = intervalsOf(feet, visits);
    expect(texts(intervals, 'limb')).toEqual(['LF', 'RF']);
    expect(numbers(intervals, 'days')).toEqual([42, 42]);
  });

  it('does not end at a day between visits where others are known to be before or after the work', () => {
    const others = [{ horse_id: 'Kit', date: january, work: 'trim' }];
    const day = (date: string, moment: string) => ({ ...foot, date, moment, toe_length_mm: 80 });
    const some = (...feet: Cells[]) => numbers(intervalsOf(feet, others), 'days');
    expect(some(day(january, 'after'), day('2026-01-26', 'between'), day(february, 'before'))).toEqual([42]);
    expect(some(day(january, 'before'), day(february, 'between'))).toEqual([]);
    expect(some(day(january, 'after'), day(february, 'between'))).toEqual([]);
  });

  it('takes what was measured on one day together, however the rows stand', () => {
    const intervals = intervalsOf([
      { ...foot, date: february, moment: 'before', toe_length_mm: 92 },
      { ...foot, date: january, moment: 'after', toe_length_mm: 80 },
      { ...foot, date: april, moment: 'before', toe_length_mm: 93 },
      { ...foot, date: february, moment: 'after', toe_length_mm: 81 },
    ]);
    expect(numbers(intervals, 'days')).toEqual([42, 49]);
    expect(texts(intervals, 'compared')).toEqual(['after to before', 'after to before']);
    expect(numbers(intervals, 'toe_length_change_mm')).toEqual([12, 12]);
  });

  it('keeps horses and limbs apart, in any order of the rows', () => {
    const rows = ['Bella', 'Kit'].flatMap((horse_id, h) =>
      ['LF', 'RH'].flatMap((limb, l) => [
        { horse_id, limb, date: february, moment: 'before', toe_length_mm: 90 + 10 * h + l },
        { horse_id, limb, date: january, moment: 'after', toe_length_mm: 80 },
      ]),
    );
    const intervals = intervalsOf(rows.reverse());
    expect(texts(intervals, 'horse_id')).toEqual(['Kit', 'Kit', 'Bella', 'Bella']);
    expect(texts(intervals, 'limb')).toEqual(['LF', 'RH', 'LF', 'RH']);
    expect(numbers(intervals, 'toe_length_change_mm')).toEqual([20, 21, 10, 11]);
  });
});

it('may be asked about any other column of the occasions', () => {
  const feet = columnsOf([
    { ...foot, date: january, moment: 'after', frog_width_mm: 40, frog_length_mm: 80 },
    { ...foot, date: february, moment: 'before', frog_width_mm: 48, frog_length_mm: 80 },
  ]);
  const intervals = intervalSheet(herd({ feet }), ['frog_ratio', 'absent']);
  expect(numbers(intervals, 'frog_ratio_start')).toEqual([0.5]);
  expect(numbers(intervals, 'frog_ratio_change')[0]).toBeCloseTo(0.1, 12);
  expect(intervals.names).not.toContain('toe_growth_mm_per_day');
});

it('the parts of a column keep its unit at the end of their names', () => {
  expect(partName('wall_level_mm', 'start')).toBe('wall_level_start_mm');
  expect(partName('toe_angle_deg', 'front')).toBe('toe_angle_front_deg');
  expect(partName('frog_ratio', 'end')).toBe('frog_ratio_end');
});

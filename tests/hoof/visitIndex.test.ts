import { describe, expect, it } from 'vitest';
import { VisitIndex } from '../../lib/hoof/visitIndex.ts';
import { TextColumn } from '../../lib/sheet/column.ts';

type Visit = readonly [horse: string, day: number, limb?: string, work?: string];

const herd = ['Bella', 'Kit'];
const indexOf = (visits: readonly Visit[]) =>
  new VisitIndex(
    {
      horse: TextColumn.from(visits.map(([horse]) => horse)),
      date: Float64Array.from(visits, ([, day]) => day),
      limb: TextColumn.from(visits.map(([, , limb = '']) => limb)),
      work: TextColumn.from(visits.map(([, , , work = 'trim']) => work)),
    },
    herd,
  );
/** Bella’s feet are 0 to 3, Kit’s 4 to 7, in the order LF RF LH RH. */
const [left, right, kit] = [0, 1, 4];

describe('the visits of a foot', () => {
  const index = () =>
    indexOf([
      ['Kit', 30],
      ['Bella', 50],
      ['Bella', 10],
      ['Bella', 30, '', 'none'],
      ['Bella', 40, 'RF'],
    ]);

  it('are found on their day only', () => {
    expect([9, 10, 11, 30, 50, 51].map((day) => index().on(left, day))).toEqual([-1, 2, -1, 3, 1, -1]);
  });

  it('with work are found on a day or before it', () => {
    expect([9, 10, 11, 30, 49, 50, 60].map((day) => index().latestWork(left, day))).toEqual([-1, 2, 2, 2, 2, 1, 1]);
  });

  it('with work strictly before a day skip that day', () => {
    expect([10, 11, 50, 51].map((day) => index().latestWork(left, day, true))).toEqual([-1, 2, 2, 1]);
    expect([30, 31].map((day) => index().latestWork(kit, day, true))).toEqual([-1, 0]);
  });

  it('for one foot only are none of the others’', () => {
    expect([left, right, kit].map((foot) => index().on(foot, 40))).toEqual([-1, 4, -1]);
    expect([left, right].map((foot) => index().latestWork(foot, 49))).toEqual([2, 4]);
  });

  it('with work are listed by their days, in order', () => {
    expect([left, right, kit, 7].map((foot) => index().workDays(foot))).toEqual([[10, 50], [10, 40, 50], [30], [30]]);
  });

  it('are none for a foot or a day that isn’t known', () => {
    for (const foot of [-1, 8, Number.NaN])
      expect([index().on(foot, 30), index().latestWork(foot, 30), index().workDays(foot)]).toEqual([-1, -1, []]);
    expect([index().on(left, Number.NaN), index().latestWork(left, Number.NaN)]).toEqual([-1, -1]);
  });
});

describe('visits that say too little or too much', () => {
  it('without a horse of the herd or without a date are left out', () => {
    const index = indexOf([
      ['', 10],
      ['Stray', 10],
      ['Bella', Number.NaN],
      ['Bella', 20],
    ]);
    expect(index.workDays(left)).toEqual([20]);
    expect(index.workDays(kit)).toEqual([]);
    expect(index.duplicates).toEqual([]);
  });

  it('on one day of one foot count once, the first of them, and the others are named', () => {
    const index = indexOf([
      ['Bella', 10, '', 'none'],
      ['Kit', 10],
      ['Bella', 10, 'LF'],
      ['Bella', 10],
      ['Bella', 12, 'RF'],
      ['Bella', 12, 'LF'],
    ]);
    expect(index.on(left, 10)).toBe(0);
    expect(index.workDays(left)).toEqual([12]);
    expect(index.duplicates).toEqual([2, 3]);
  });

  it('are named in the order of their rows, whichever horse comes first', () => {
    const twice = ['Kit', 'Kit', 'Bella', 'Bella'].map((horse): Visit => [horse, 10]);
    expect(indexOf(twice).duplicates).toEqual([1, 3]);
  });

  it('of a table without limbs and work are work on all four feet', () => {
    const index = new VisitIndex({ horse: TextColumn.from(['Kit']), date: Float64Array.of(10) }, herd);
    expect([0, 3, 4, 5, 6, 7].map((foot) => index.latestWork(foot, 10))).toEqual([-1, -1, 0, 0, 0, 0]);
  });
});

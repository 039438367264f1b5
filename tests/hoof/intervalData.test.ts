import { describe, expect, it } from 'vitest';
import { herd } from '../../lib/hoof/herd.ts';
import { intervalData } from '../../lib/hoof/intervalData.ts';
import { intervalSpread, usualChangeSpread } from '../../lib/hoof/intervalSpread.ts';
import { daysFromIso } from '../../lib/sheet/days.ts';

interface Reading {
  readonly horse?: string;
  readonly date: string;
  readonly limb?: string;
  readonly moment?: string;
  readonly level: number;
  readonly shod?: string;
}

/** A herd whose feet have an inside wall of 60 mm and more, and an outside wall of 60 mm. */
function yard(readings: readonly Reading[], visits: readonly Record<string, string>[] = []) {
  const column = (of: (reading: Reading) => string) => ({ values: readings.map(of) });
  return herd({
    feet: {
      horse_id: column(({ horse = 'Star' }) => horse),
      date: column(({ date }) => date),
      limb: column(({ limb = 'LF' }) => limb),
      moment: column(({ moment = 'before' }) => moment),
      shod: column(({ shod = '' }) => shod),
      medial_wall_mm: { unit: 'mm', values: Float64Array.from(readings, ({ level }) => 60 + level) },
      lateral_wall_mm: { unit: 'mm', values: Float64Array.from(readings, () => 60) },
    },
    ...(visits.length > 0 && {
      visits: Object.fromEntries(
        ['horse_id', 'date', 'farrier', 'work', 'therapeutic'].map((name) => [
          name,
          { values: visits.map((visit) => visit[name] ?? '') },
        ]),
      ),
    }),
  });
}

/** From after the work on one day to before the work on another. */
const interval = (
  horse: string,
  from: string,
  to: string,
  start: number,
  end: number,
  more: Partial<Reading> = {},
): Reading[] => [
  { horse, date: from, moment: 'after', level: start, ...more },
  { horse, date: to, moment: 'before', level: end, ...more },
];

describe('intervalData', () => {
  const [from, to] = ['2026-01-05', '2026-02-16'];

  it('takes the change from after the work to before the next, signed or as a size', () => {
    const small = yard(interval('Star', from, to, -2, 3));
    const signed = intervalData(small, { outcome: 'wall_level_mm' });
    expect({ ...signed, changeError: undefined }).toMatchObject({
      horse: ['Star'],
      limb: ['LF'],
      start: Float64Array.of(daysFromIso(from)),
      end: Float64Array.of(daysFromIso(to)),
      change: Float64Array.of(5),
      atStart: Float64Array.of(-2),
      unit: 'mm',
      season: ['Jan–Mar'],
      leftOut: { unmeasured: 0, therapeutic: 0, otherMoments: 0 },
    });
    const size = intervalData(small, { outcome: 'wall_level_mm', size: true });
    expect(Array.from(size.change)).toEqual([1]);
    expect(Array.from(size.atStart)).toEqual([2]);
    // Two heights at either end, each with the error of the table of measured columns.
    expect(size.changeError[0]).toBeCloseTo(Math.sqrt(4 * 1.5 ** 2), 10);
  });

  it('leaves out therapeutic feet and what was measured at one end only, and counts them', () => {
    const readings = [
      ...interval('Star', from, to, 0, 1),
      ...interval('Moss', from, to, 0, 1),
      { horse: 'Fern', date: from, moment: 'after', level: 0 },
      { horse: 'Fern', date: to, moment: 'before', level: Number.NaN },
    ];
    const visits = [
      { horse_id: 'Star', date: from, farrier: 'A', work: 'trim', therapeutic: 'no' },
      { horse_id: 'Moss', date: from, farrier: 'B', work: 'trim', therapeutic: 'yes' },
      { horse_id: 'Fern', date: from, farrier: 'A', work: 'trim', therapeutic: 'no' },
    ];
    const data = intervalData(yard(readings, visits), { outcome: 'wall_level_mm' });
    expect(data.horse).toEqual(['Star']);
    expect(data.farrier).toEqual(['A']);
    expect(data.leftOut).toEqual({ unmeasured: 1, therapeutic: 1, otherMoments: 0 });
  });

  it('keeps to the feet that are asked for', () => {
    const readings = ['LF', 'RF', 'LH', 'RH'].flatMap((limb) => interval('Star', from, to, 0, 1, { limb }));
    const data = intervalData(yard(readings), { outcome: 'wall_level_mm', limbs: ['LH', 'RH'] });
    expect([...data.limb].sort()).toEqual(['LH', 'RH']);
    expect(data.leftOut.unmeasured).toBe(0);
  });

  it('compares like moments only where too few run from after the work to before the next', () => {
    const day = (i: number) => new Date(Date.UTC(2026, 0, 5 + 42 * i)).toISOString().slice(0, 10);
    const seenBefore = (horse: string, count: number) =>
      Array.from({ length: count + 1 }, (_, i): Reading => ({ horse, date: day(i), moment: 'before', level: i }));
    const clean = (count: number) =>
      Array.from({ length: count }, (_, i) => interval(`c${i}`, day(0), day(1), 0, 1)).flat();
    const few = intervalData(yard([...seenBefore('Moss', 25), ...clean(5)]), { outcome: 'wall_level_mm' });
    expect(few.compared).toBe('before to before');
    expect(few.horse).toHaveLength(25);
    expect(few.leftOut.otherMoments).toBe(5);
    const many = intervalData(yard([...seenBefore('Moss', 25), ...clean(20)]), { outcome: 'wall_level_mm' });
    expect(many.compared).toBe('after to before');
    expect(many.leftOut.otherMoments).toBe(25);
  });

  it('needs twenty intervals of the best sort, and keeps to it where no other is more frequent', () => {
    const day = (i: number) => new Date(Date.UTC(2026, 0, 5 + 42 * i)).toISOString().slice(0, 10);
    const seenBefore = (count: number) =>
      Array.from({ length: count + 1 }, (_, i): Reading => ({ horse: 'Moss', date: day(i), level: i }));
    const clean = (count: number) =>
      Array.from({ length: count }, (_, i) => interval(`c${i}`, day(0), day(1), 0, 1)).flat();
    const compared = (readings: readonly Reading[]) =>
      intervalData(yard(readings), { outcome: 'wall_level_mm' }).compared;
    expect(compared([...seenBefore(25), ...clean(19)])).toBe('before to before');
    expect(compared([...seenBefore(5), ...clean(5)])).toBe('after to before');
    expect(compared([...seenBefore(5), ...clean(4)])).toBe('before to before');
  });

  it('counts a therapeutic foot once, measured or not', () => {
    const readings = [
      { horse: 'Moss', date: from, moment: 'after', level: Number.NaN },
      { horse: 'Moss', date: to, moment: 'before', level: 0 },
    ];
    const visits = [{ horse_id: 'Moss', date: from, work: 'trim', therapeutic: 'yes' }];
    const { leftOut } = intervalData(yard(readings, visits), { outcome: 'wall_level_mm' });
    expect(leftOut).toEqual({ unmeasured: 0, therapeutic: 1, otherMoments: 0 });
  });

  it('knows nothing of the error of a column that has none, nor of shoes that nobody wrote down', () => {
    const { visits, visitIndex, occasions } = herd({
      feet: {
        horse_id: { values: ['Star', 'Star'] },
        ...{ date: { values: [from, to] }, limb: { values: ['LF', 'LF'] }, moment: { values: ['after', 'before'] } },
        bruises: { values: Float64Array.of(1, 4) },
      },
    });
    const data = intervalData({ visits, visitIndex, occasions }, { outcome: 'bruises' });
    expect(data).toMatchObject({ unit: '1', change: Float64Array.of(3), changeError: Float64Array.of(Number.NaN) });
    expect([data.shod, data.farrier]).toEqual([[''], ['']]);
  });

  it('knows shoeing and the quarter of the year in which the middle lies', () => {
    const readings = [
      ...interval('Star', '2026-03-01', '2026-04-20', 0, 1, { shod: 'yes' }),
      ...interval('Moss', '2026-06-20', '2026-08-01', 0, 1, { shod: 'no' }),
      ...interval('Fern', '2026-11-25', '2027-01-02', 0, 1),
    ];
    const { horse, season, shod } = intervalData(yard(readings), { outcome: 'wall_level_mm' });
    expect(Object.fromEntries(horse.map((name, i) => [name, [season[i], shod[i]]]))).toEqual({
      Star: ['Jan–Mar', 'shod'],
      Moss: ['Jul–Sep', 'bare'],
      Fern: ['Oct–Dec', ''],
    });
  });

  it('refuses what is no column of numbers', () => {
    const small = yard(interval('Star', from, to, 0, 1));
    for (const outcome of ['limb', 'nothing', '__proto__', 'shod'])
      expect(() => intervalData(small, { outcome })).toThrow(`${outcome} is no column of numbers`);
  });

  it('is empty where there is nothing, and the spread says so', () => {
    const none = intervalData(yard([{ date: from, level: 0 }]), { outcome: 'wall_level_mm' });
    expect(none.horse).toEqual([]);
    const spread = intervalSpread(none);
    expect({ horses: spread.horses, rows: spread.rows }).toEqual({ horses: 0, rows: 0 });
    for (const value of [spread.shortest, spread.middle, spread.longest, spread.withinHorses, spread.betweenHorses])
      expect(value).toBeNaN();
    expect(usualChangeSpread(none)).toBeNaN();
  });
});

describe('intervalSpread', () => {
  it('counts an interval of a horse once, however many feet have it, and parts within from between', () => {
    const readings = [
      ...['LF', 'RF'].flatMap((limb) => [
        ...interval('Star', '2026-01-01', '2026-02-10', 0, 1, { limb }),
        ...interval('Star', '2026-02-10', '2026-04-01', 0, 2, { limb }),
      ]),
      ...interval('Moss', '2026-01-01', '2026-02-25', 0, 4),
      ...interval('Moss', '2026-02-25', '2026-04-21', 0, 4),
    ];
    const data = intervalData(yard(readings), { outcome: 'wall_level_mm' });
    const spread = intervalSpread(data);
    // Star: 40 and 50 days; Moss: 55 twice.
    expect(spread).toMatchObject({
      horses: 2,
      feet: 3,
      intervals: 4,
      rows: 6,
      shortest: 40,
      middle: 52.5,
      longest: 55,
    });
    expect(spread.withinHorses).toBeCloseTo(Math.sqrt((2 * 25) / 2), 10);
    expect(spread.betweenHorses).toBeCloseTo(10 / Math.SQRT2, 10);
    // Each of Star's feet changed by 1 and by 2, Moss's by 4 twice: 2 × 0.5 over three degrees of freedom.
    expect(usualChangeSpread(data)).toBeCloseTo(Math.sqrt(1 / 3), 10);
  });
});

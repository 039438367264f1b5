import { describe, expect, it } from 'vitest';
import { type DueData, dueData } from '../../lib/hoof/dueData.ts';
import { dueList } from '../../lib/hoof/dueList.ts';
import { dueEvents, dueTable } from '../../lib/hoof/dueTable.ts';
import { dueTask } from '../../lib/hoof/dueTask.ts';
import { herd } from '../../lib/hoof/herd.ts';
import type { Limb } from '../../lib/hoof/limbs.ts';
import { daysFromIso, isoFromDays } from '../../lib/sheet/days.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { columnsOf } from './feet.ts';

const start = daysFromIso('2026-01-05');
const names = ['Ash', 'Birch', 'Cedar', 'Dill', 'Elder'];
/** Millimetres a week of each horse; Ash grows fastest. */
const pace = [3, 2, 2, 2, 1];
const every = 42;

/** Five horses, front feet, five intervals of six weeks; the toe grows by its pace and a little up and down. */
function yard(intervals = 5) {
  const rows = names.flatMap((horse_id, h) =>
    ['LF', 'RF'].flatMap((limb, f) =>
      Array.from({ length: intervals + 1 }, (_, visit) => {
        const date = isoFromDays(start + every * visit);
        const wobble = ((h + 2 * f + visit) % 3) - 1;
        return [
          { horse_id, date, limb, moment: 'before', toe_length_mm: 80 + 6 * pace[h] + 0.3 * wobble },
          { horse_id, date, limb, moment: 'after', toe_length_mm: 80 },
        ];
      }).flat(),
    ),
  );
  return herd({ feet: columnsOf(rows) });
}

/** Intervals of six weeks of some feet, each with its pace in mm a week and a little up and down. */
function rowsOf(horses: readonly string[], paces: Partial<Record<Limb, number>>, intervals: number): DueData {
  const rows = horses.flatMap((horse, h) =>
    Object.entries(paces).flatMap(([limb, pace], f) =>
      Array.from({ length: intervals }, (_, i) => ({
        horse,
        limb,
        change: 6 * pace + 0.3 * (((h + 2 * f + i) % 3) - 1),
      })),
    ),
  );
  return {
    ...{ outcome: 'toe_length_mm', unit: 'mm' },
    horse: rows.map(({ horse }) => horse),
    limb: rows.map(({ limb }) => limb),
    days: new Float64Array(rows.length).fill(every),
    change: Float64Array.from(rows, ({ change }) => change),
    lastWork: new Map(horses.map((horse) => [horse, start])),
  };
}

function joined(a: DueData, b: DueData): DueData {
  return {
    ...a,
    horse: [...a.horse, ...b.horse],
    limb: [...a.limb, ...b.limb],
    days: Float64Array.of(...a.days, ...b.days),
    change: Float64Array.of(...a.change, ...b.change),
    lastWork: new Map([...a.lastWork, ...b.lastWork]),
  };
}

const data = dueData(yard(), 'toe_length_mm');
const list = dueList(data, 6);

describe('dueData', () => {
  it('takes the changes from after one visit’s work to before the next, and the day of the last work', () => {
    expect(data.days).toHaveLength(50);
    expect(new Set(data.days)).toEqual(new Set([every]));
    expect(data.unit).toBe('mm');
    expect(isoFromDays(data.lastWork.get('Ash')!)).toBe(isoFromDays(start + 5 * every));
  });

  it('leaves out other moments, days of none and what is missing at either end', () => {
    const numbers = (...values: number[]) => ({ unit: 'mm', values: Float64Array.from(values) });
    const intervals = plainTable({
      horse_id: { values: ['Ash', 'Ash', 'Ash', 'Ash', 'Ash', 'Fig'] },
      limb: { values: ['LF', 'RF', 'LF', 'LF', 'LF', 'LH'] },
      compared: { values: ['after to before', 'before to before', ...new Array(4).fill('after to before')] },
      days: { values: Float64Array.of(42, 42, 0, 42, 42, 35) },
      toe_length_start_mm: numbers(80, 80, 80, Number.NaN, 80, 70),
      toe_length_end_mm: numbers(90, 91, 92, 93, Number.NaN, 77),
    });
    const visits = plainTable({
      horse_id: { values: ['Ash', 'Ash', 'Ash', 'Ash', '', 'Oak'] },
      date: { kind: 'date', values: Float64Array.of(20_042, 20_084, 20_000, Number.NaN, 20_500, 20_010) },
      work: { values: ['trim', 'none', 'trim', 'trim', 'trim', ''] },
    });
    expect(dueData({ intervals, visits }, 'toe_length_mm')).toEqual({
      ...{ outcome: 'toe_length_mm', unit: 'mm' },
      ...{ horse: ['Ash', 'Fig'], limb: ['LF', 'LH'], days: Float64Array.of(42, 35), change: Float64Array.of(10, 7) },
      lastWork: new Map([
        ['Ash', 20_042],
        ['Oak', 20_010],
        ['Fig', Number.NaN],
      ]),
    });
  });
});

describe('dueList', () => {
  it('has the herd’s usual pace at the mean of its feet', () => {
    expect(list.usual.front).toBeCloseTo(2, 1);
  });

  it('puts a foot at the usual pace on the day of the rule, a faster one before it and a slower one after', () => {
    const days = new Map(list.horses.map(({ horse, foot }) => [horse, foot!.days]));
    // Two a week against three: two thirds of six weeks; against one: twice as long, both drawn a little to the middle.
    expect(days.get('Birch')).toBeCloseTo(42, 0);
    expect(days.get('Ash')).toBeGreaterThan(28 - 1);
    expect(days.get('Ash')).toBeLessThan(31);
    expect(days.get('Elder')).toBeGreaterThan(70);
    expect(days.get('Elder')).toBeLessThan(84 + 2);
    expect(list.horses[0].horse).toBe('Ash');
  });

  it('has the pace of front and hind feet apart, and every foot at its own', () => {
    const paces = { LF: 2, RF: 2, LH: 3, RH: 3 } as const;
    const { usual, feet } = dueList(rowsOf(['Ash', 'Birch', 'Cedar'], paces, 4), 6);
    expect(usual.front).toBeCloseTo(2, 1);
    expect(usual.hind).toBeCloseTo(3, 1);
    for (const { limb, perWeek, days } of feet) {
      expect(perWeek).toBeCloseTo(paces[limb], 1);
      expect(days).toBeCloseTo(42, -1);
    }
    const front = dueList(rowsOf(['Ash', 'Birch', 'Cedar'], { LF: 2, RF: 2 }, 4), 6).usual;
    expect(front.hind).toBe(front.front);
  });

  it('tells apart the feet of one horse, has each once and names the one that comes first', () => {
    const others = rowsOf(['Birch', 'Cedar', 'Dill', 'Elder'], { LF: 2, RF: 2 }, 6);
    for (const [paces, fast] of [
      [{ LF: 2, RF: 5 }, 'RF'],
      [{ LF: 5, RF: 2 }, 'LF'],
    ] as const) {
      const { feet, horses } = dueList(joined(others, rowsOf(['Ash'], paces, 6)), 6);
      expect(feet).toHaveLength(10);
      const own = feet.filter(({ horse }) => horse === 'Ash').sort((a, b) => b.perWeek - a.perWeek);
      expect(own[0].limb).toBe(fast);
      expect(own[0].perWeek - own[1].perWeek).toBeGreaterThan(1);
      expect(horses.find(({ horse }) => horse === 'Ash')!.foot).toBe(own[0]);
    }
  });

  it('gives no day at a pace of none or of the other direction', () => {
    const others = rowsOf(['Birch', 'Cedar', 'Dill', 'Elder'], { LF: 2, RF: 2 }, 6);
    const { feet, horses } = dueList(joined(others, rowsOf(['Ash'], { LF: -3, RF: -3 }, 6)), 6);
    expect(feet.filter(({ horse }) => horse === 'Ash').map(({ days }) => days)).toEqual([Infinity, Infinity]);
    expect(horses.find(({ horse }) => horse === 'Ash')!.foot).toBeUndefined();
  });

  it('puts its range where 1.96 standard errors of the pace would put the day, rising or falling', () => {
    const fallen = dueList({ ...data, change: data.change.map((change) => -change) }, 6);
    for (const [i, { perWeek, error, days, earliest, latest }] of list.feet.entries()) {
      const usual = list.usual.front;
      expect(days).toBeCloseTo((42 * usual) / perWeek, 9);
      expect(earliest).toBeCloseTo((42 * usual) / (perWeek + 1.96 * error), 9);
      const slowest = perWeek - 1.96 * error;
      if (slowest > 0) expect(latest).toBeCloseTo((42 * usual) / slowest, 9);
      else expect(latest).toBe(Infinity);
      expect(fallen.feet[i].perWeek).toBeCloseTo(-perWeek, 6);
      expect(fallen.feet[i].earliest).toBeCloseTo(earliest, 4);
    }
  });

  it('has the earliest first, the rule counting where it comes before the foot, and the unknown last by name', () => {
    const order = (lastWork: readonly (readonly [string, number])[], of = data) =>
      dueList({ ...of, lastWork: new Map(lastWork) }, 6).horses.map(({ horse }) => horse);
    const none = { ...data, horse: [], limb: [], days: new Float64Array(), change: new Float64Array() };
    const days = [
      ['Zoe', 100],
      ['Fig', Number.NaN],
      ['Abe', 100],
      ['Mia', 50],
      ['Eve', Number.NaN],
    ] as const;
    expect(order(days, none)).toEqual(['Mia', 'Abe', 'Zoe', 'Eve', 'Fig']);
    // Ash’s own day is some 29 after the work; Elder’s is far behind the rule.
    expect(
      order([
        ['Elder', 0],
        ['Ash', 5],
      ]),
    ).toEqual(['Ash', 'Elder']);
    expect(
      order([
        ['Ash', 20],
        ['Elder', 0],
      ]),
    ).toEqual(['Elder', 'Ash']);
  });

  it('needs four feet, twelve intervals and a foot with two of them', () => {
    const reason = (horses: readonly string[], paces: Partial<Record<Limb, number>>, intervals: number) =>
      dueList(rowsOf(horses, paces, intervals), 6).reason;
    expect(reason(['Ash', 'Birch'], { LF: 2, RF: 2 }, 3)).toBeUndefined();
    expect(reason(['Ash', 'Birch', 'Cedar'], { LF: 2 }, 4)).toContain('3 feet with 12 intervals');
    expect(reason(['Ash', 'Birch'], { LF: 2, RF: 2 }, 2)).toContain('4 feet with 8 intervals');
    expect(reason([...names, 'Fig'], { LF: 2, RF: 2 }, 1)).toContain('12 feet with 12 intervals');
    expect(reason([...names, 'Fig'], { LF: 2, RF: 2 }, 2)).toBeUndefined();
    const { usual } = dueList(rowsOf(['Ash'], { LF: 2 }, 4), 6);
    expect(usual).toEqual({ front: Number.NaN, hind: Number.NaN });
  });

  it('is what its task gives', async () => {
    expect(await dueTask.run({ data, weeks: 6 })).toEqual(list);
  });

  it('gives a range that holds its day, and the yard’s rule beside it', () => {
    for (const { lastWork, rule, foot } of list.horses) {
      expect(rule - lastWork).toBe(42);
      expect(foot!.earliest).toBeLessThan(foot!.days);
      expect(foot!.latest).toBeGreaterThan(foot!.days);
      expect(foot!.intervals).toBe(5);
    }
  });

  it('draws a foot with a single interval further towards the herd than one with five', () => {
    const few = yard();
    const rows = dueData(few, 'toe_length_mm');
    const keep = rows.horse.map((horse, i) => horse !== 'Ash' || i === rows.horse.indexOf('Ash'));
    const picked = <T>(values: ArrayLike<T>) => Array.from(values).filter((_, i) => keep[i]);
    const thin = {
      ...rows,
      horse: picked(rows.horse),
      limb: picked(rows.limb),
      days: Float64Array.from(picked(rows.days)),
      change: Float64Array.from(picked(rows.change)),
    };
    const once = dueList(thin, 6).feet.find(({ horse }) => horse === 'Ash')!;
    const five = list.feet.find(({ horse, limb }) => horse === 'Ash' && limb === once.limb)!;
    expect(once.intervals).toBe(1);
    expect(once.perWeek).toBeLessThan(five.perWeek);
    expect(once.perWeek).toBeGreaterThan(2);
    expect(once.error).toBeGreaterThan(five.error);
  });

  it('says only the rule, and why, where too little was measured', () => {
    const { horses, feet, reason } = dueList(dueData(yard(1), 'toe_length_mm'), 8);
    expect(feet).toEqual([]);
    expect(reason).toContain('10 feet with 10 intervals');
    expect(horses.map(({ rule, lastWork }) => rule - lastWork)).toEqual([56, 56, 56, 56, 56]);
    expect(horses.every(({ foot }) => foot === undefined)).toBe(true);
  });

  it('refuses a rule of no weeks', () => {
    expect(() => dueList(data, 0)).toThrow('The yard’s rule must be above zero weeks, found 0');
  });
});

describe('dueTable and dueEvents', () => {
  it('write one row and one day a horse, the rule and the foot’s own day', () => {
    const table = dueTable(list);
    expect(table.horse_id.values[0]).toBe('Ash');
    const [rule, own] = [table.rule_date.values[0] as number, table.foot_date.values[0] as number];
    expect(own).toBeLessThan(rule);
    const { lastWork, foot } = list.horses[0];
    expect(table.last_work.values[0]).toBe(lastWork);
    expect(table.first_limb.values[0]).toBe(foot!.limb);
    expect(table.foot_date_earliest.values[0]).toBe(Math.round(lastWork + foot!.earliest));
    expect(table.foot_date_latest.values[0]).toBe(Math.round(lastWork + foot!.latest));
    expect(table.intervals.values).toEqual(new Float64Array(5).fill(5));
    const [event] = dueEvents(list);
    expect(event.date).toBe(rule);
    expect(event.description).toContain(isoFromDays(own));
    expect(event.description).toContain('seen by the vet now');
  });

  it('say only the rule of a horse with too few measurements', () => {
    const few = dueList(dueData(yard(1), 'toe_length_mm'), 6);
    const { first_limb, foot_date, intervals } = dueTable(few);
    expect(first_limb.values[0]).toBe('');
    expect([foot_date.values[0], intervals.values[0]]).toEqual([Number.NaN, Number.NaN]);
    expect(dueEvents(few)[0].description).toBe(
      'Too few measurements to say more. A horse that is lame or sore is seen by the vet now.',
    );
  });

  it('leave out days that nothing is known of', () => {
    const none = dueList(
      {
        ...data,
        horse: [],
        limb: [],
        days: new Float64Array(),
        change: new Float64Array(),
        lastWork: new Map([['Fig', Number.NaN]]),
      },
      6,
    );
    expect(dueTable(none).rule_date.values).toEqual(Float64Array.of(Number.NaN));
    expect(dueEvents(none)).toEqual([]);
  });
});

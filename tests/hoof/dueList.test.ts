import { describe, expect, it } from 'vitest';
import { dueData } from '../../lib/hoof/dueData.ts';
import { dueList } from '../../lib/hoof/dueList.ts';
import { dueEvents, dueTable } from '../../lib/hoof/dueTable.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { daysFromIso, isoFromDays } from '../../lib/sheet/days.ts';
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

const data = dueData(yard(), 'toe_length_mm');
const list = dueList(data, 6);

describe('dueData', () => {
  it('takes the changes from after one visit’s work to before the next, and the day of the last work', () => {
    expect(data.days).toHaveLength(50);
    expect(new Set(data.days)).toEqual(new Set([every]));
    expect(data.unit).toBe('mm');
    expect(isoFromDays(data.lastWork.get('Ash')!)).toBe(isoFromDays(start + 5 * every));
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

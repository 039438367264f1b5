import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  longestEver,
  type PlannedVisit,
  planEvents,
  planTable,
  type TrialRules,
  trialPlan,
} from '../../lib/hoof/trialPlan.ts';

const rules: TrialRules = {
  horses: ['Star', 'Bramble', 'Fern', 'Moss', 'Oak'],
  start: 20800,
  intervals: 6,
  shorter: 5,
  longer: 7,
  least: 4,
  most: 8,
  seed: 3,
};
const planned = (changes: Partial<TrialRules> = {}) => trialPlan({ ...rules, ...changes }) as readonly PlannedVisit[];

describe('trialPlan', () => {
  it('gives every horse as many shorter as longer intervals, one of each in every pair', () => {
    const plan = planned();
    expect(plan).toHaveLength(30);
    for (const horse of rules.horses) {
      const own = plan.filter((visit) => visit.horse === horse);
      expect(own.map(({ interval }) => interval)).toEqual([1, 2, 3, 4, 5, 6]);
      for (const first of [0, 2, 4])
        expect([own[first].which, own[first + 1].which].sort()).toEqual(['longer', 'shorter']);
    }
  });

  it('has half of the horses begin each pair with the shorter one, one more or less where they are odd', () => {
    for (let seed = 1; seed <= 30; seed++)
      for (const interval of [1, 3, 5]) {
        const first = planned({ seed }).filter((visit) => visit.interval === interval);
        const short = first.filter(({ which }) => which === 'shorter').length;
        expect([2, 3]).toContain(short);
      }
  });

  it('counts days from one visit to the next', () => {
    for (const horse of rules.horses) {
      let last = rules.start;
      for (const { weeks, which, date } of planned().filter((visit) => visit.horse === horse)) {
        expect(weeks).toBe(which === 'shorter' ? 5 : 7);
        expect(date - last).toBe(7 * weeks);
        last = date;
      }
    }
  });

  it('draws by the seed, and every horse comes first as often', () => {
    expect(planned()).toEqual(planned());
    expect(planned({ seed: 4 })).not.toEqual(planned());
    const counts = rules.horses.map((horse) => {
      let short = 0;
      for (let seed = 0; seed < 400; seed++)
        if (planned({ seed }).find((visit) => visit.horse === horse)?.which === 'shorter') short++;
      return short;
    });
    for (const count of counts) {
      expect(count).toBeGreaterThan(160);
      expect(count).toBeLessThan(240);
    }
  });

  it('never plans an interval outside what farrier and vet accept, nor beyond ten weeks (law)', () => {
    const weeks = fc.double({ min: 0, max: 20, noNaN: true });
    fc.assert(
      fc.property(weeks, weeks, weeks, weeks, fc.integer(), (shorter, longer, least, most, seed) => {
        const plan = trialPlan({ ...rules, shorter, longer, least, most, seed });
        if (typeof plan === 'string') return;
        for (const visit of plan) {
          expect(visit.weeks).toBeGreaterThanOrEqual(least);
          expect(visit.weeks).toBeLessThanOrEqual(Math.min(most, longestEver));
        }
      }),
    );
  });

  it('takes the limits themselves, ten weeks, and as few as two intervals', () => {
    expect(planned({ shorter: 4, longer: 8 })).toHaveLength(30);
    expect(planned({ longer: longestEver, most: longestEver })).toHaveLength(30);
    expect(planned({ intervals: 2 })).toHaveLength(10);
  });

  it('draws each pair afresh: who begins with the shorter one in one pair need not in the next', () => {
    const begins = (seed: number, interval: number) =>
      planned({ seed })
        .filter((visit) => visit.interval === interval)
        .map(({ which }) => which)
        .join();
    const alike = Array.from({ length: 60 }, (_, seed) => begins(seed, 1) === begins(seed, 3)).filter(Boolean).length;
    expect(alike).toBeLessThan(20);
    // And how many begin with it is not always the larger half.
    const short = (seed: number) => begins(seed, 1).split('shorter').length - 1;
    expect(new Set(Array.from({ length: 30 }, (_, seed) => short(seed)))).toEqual(new Set([2, 3]));
  });

  it('says why there is no plan', () => {
    expect(trialPlan({ ...rules, longer: 9 })).toBe(
      'An interval of 9 weeks passes the 8 weeks that farrier and vet accept',
    );
    expect(trialPlan({ ...rules, shorter: 3 })).toBe(
      'An interval of 3 weeks is below the 4 weeks that farrier and vet accept',
    );
    expect(trialPlan({ ...rules, longer: 12, most: 14 })).toMatch(/passes 10 weeks, and nothing longer is planned/);
    expect(trialPlan({ ...rules, shorter: 7 })).toMatch(/must be shorter than/);
    expect(trialPlan({ ...rules, intervals: 1 })).toMatch(/needs two intervals/);
    expect(trialPlan({ ...rules, intervals: Number.NaN })).toMatch(/needs two intervals/);
    expect(trialPlan({ ...rules, longer: Number.NaN })).toMatch(/must be shorter/);
    expect(trialPlan({ ...rules, horses: [] })).toBe('A plan needs a horse');
  });

  it('lays itself out as a table and as days of a calendar, each day known by its key', () => {
    const plan = planned();
    const table = planTable(plan);
    const { horse_id, interval_weeks, date, which } = table;
    const last = Object.fromEntries(Object.entries(table).map(([name, { values }]) => [name, values[29]]));
    const { horse, interval, weeks, ...rest } = plan[29];
    expect(last).toEqual({ horse_id: horse, interval, interval_weeks: weeks, ...rest });
    expect(horse_id.values).toHaveLength(30);
    expect(interval_weeks.unit).toBe('wk');
    expect(date.kind).toBe('date');
    expect(which.values[0]).toBe(plan[0].which);
    const events = planEvents(plan, 3);
    expect(new Set(events.map(({ key }) => key)).size).toBe(30);
    expect(events[0].title).toBe('Farrier: Star');
    expect(events[0].description).toMatch(/call the vet and leave the plan/);
  });

  it('takes an odd number of intervals', () => {
    const plan = planned({ intervals: 3 });
    expect(plan).toHaveLength(15);
    const short = plan.filter(({ interval, which }) => interval === 3 && which === 'shorter').length;
    expect([2, 3]).toContain(short);
  });
});

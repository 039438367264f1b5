import { describe, expect, it } from 'vitest';
import { intervalDesign } from '../../lib/hoof/intervalDesign.ts';
import { type IntervalFit, intervalEffect, intervalModel } from '../../lib/hoof/intervalModel.ts';
import { mixedModel } from '../../lib/stats/index.ts';
import { changed, type Invented, intervalRows } from './intervalRows.ts';

const quick = { draws: 199 };
const fitted = (invented: Invented = {}, options = {}) =>
  intervalModel(intervalRows(invented), { ...quick, ...options }) as IntervalFit;

describe('intervalDesign', () => {
  it('parts the length of an interval into its horse’s mean and what it is beyond that, in weeks', () => {
    const data = intervalRows();
    const { columns, rows } = intervalDesign(data, false) as Exclude<ReturnType<typeof intervalDesign>, string>;
    const [within, mean] = [columns.interval_within, columns.interval_mean] as Float64Array[];
    for (const [i, row] of rows.entries())
      expect(within[i] + mean[i]).toBeCloseTo((data.end[row] - data.start[row]) / 7, 12);
    for (const horse of new Set(data.horse)) {
      const own = [...rows.keys()].filter((i) => data.horse[rows[i]] === horse);
      expect(own.reduce((sum, i) => sum + within[i], 0)).toBeCloseTo(0, 9);
      expect(new Set(own.map((i) => mean[i])).size).toBe(1);
    }
  });

  it('has farriers as fixed terms where there are few and as a spread where there are many', () => {
    const of = (farriers: number) =>
      intervalDesign(intervalRows({ farriers }), false) as Exclude<ReturnType<typeof intervalDesign>, string>;
    expect(of(1).farrierAs).toBe('not in the model');
    expect(of(2).farrierAs).toBe('fixed');
    expect(of(4).fixed).toContain('farrier');
    expect(of(6).farrierAs).toBe('random');
    expect(of(6).fixed).not.toContain('farrier');
    expect(of(6).random).toContainEqual({ by: ['farrier'] });
  });

  it('groups by horse, by foot and by interval as far as they can be told apart', () => {
    const groups = (invented: Invented) =>
      (intervalDesign(intervalRows(invented), false) as Exclude<ReturnType<typeof intervalDesign>, string>).random.map(
        ({ by }) => by.join(' '),
      );
    expect(groups({})).toEqual(['horse interval', 'horse limb', 'horse']);
    expect(groups({ limbs: ['LF'] })).toEqual(['horse']);
  });

  it('leaves out rows whose shoeing, season or farrier is not known, and a circumstance that few rows know', () => {
    const data = intervalRows();
    const some = changed(data, { farrier: data.farrier.map((name, i) => (i < 5 ? '' : name)) });
    const most = changed(data, { farrier: data.farrier.map((name, i) => (i < 80 ? '' : name)) });
    const of = (rows: typeof data) => intervalDesign(rows, false) as Exclude<ReturnType<typeof intervalDesign>, string>;
    expect(of(some).missing).toBe(5);
    expect(of(some).notKnown).toEqual([]);
    expect(of(most).missing).toBe(0);
    expect(of(most).notKnown).toEqual(['farrier']);
    expect(of(most).fixed).not.toContain('farrier');
  });

  it('says in words why there is too little', () => {
    expect(intervalDesign(intervalRows({ horses: 2 }), false)).toMatch(
      /of 2 horses to go by; at least 20 intervals of 3 horses/,
    );
    expect(intervalDesign(intervalRows({ horses: 4, visits: 2 }), false)).toMatch(
      /^There are 16 intervals of 4 horses/,
    );
    expect(intervalDesign(intervalRows({ horses: 0 }), false)).toMatch(/0 intervals of 0 horses/);
    const data = intervalRows();
    expect(intervalDesign(changed(data, { end: data.start.map((day) => day + 42) }), false)).toMatch(
      /same number of days/,
    );
    const small = intervalRows({ horses: 3, visits: 2, limbs: ['LF', 'RF', 'LH', 'RH'] });
    const many = changed(small, {
      farrier: small.farrier.map((_, i) => (i < 2 ? '' : `f${i % 4}`)),
      season: small.season.map((_, i) => `quarter ${Math.floor(i / 2) % 4}`),
    });
    expect(intervalDesign(many, false)).toBe(
      'There are 22 intervals for 13 numbers that the model has to find; at least 23 are needed',
    );
    expect(intervalModel(intervalRows({ horses: 1 }), quick)).toEqual({
      kind: 'too little',
      reason: 'There are 12 intervals of 1 horse to go by; at least 20 intervals of 3 horses are needed',
    });
  });
});

describe('intervalModel', () => {
  it('finds the effect within horses, and keeps what lies between horses out of it', () => {
    for (const between of [-2, 0, 2]) {
      const { within, between: other } = fitted({ horses: 20, visits: 8, within: 0.5, between, noise: 0.5, seed: 4 });
      expect(within.lower).toBeLessThan(0.5);
      expect(within.upper).toBeGreaterThan(0.5);
      expect(within.upper - within.lower).toBeLessThan(0.3);
      expect(Math.abs(other!.estimate - between)).toBeLessThan(4 * other!.se + 0.05);
    }
  });

  it('gives the numbers of the mixed model that it names, and splits every row', () => {
    const data = intervalRows({ seed: 2 });
    const answer = intervalModel(data, quick) as IntervalFit;
    const { columns, fixed, random } = intervalDesign(data, false) as Exclude<
      ReturnType<typeof intervalDesign>,
      string
    >;
    const model = mixedModel(columns, { response: 'change', fixed: [...fixed], random });
    expect(answer.terms.map(({ term }) => term)).toEqual(model.fixed.map(({ term }) => term));
    expect(answer.within.estimate).toBe(model.fixed[1].estimate);
    expect(answer.residualSd).toBe(model.residualSd);
    for (const [i, row] of answer.rows.entries())
      expect(answer.fitted[i] + answer.residuals[i]).toBeCloseTo(data.change[row], 10);
    expect(intervalEffect(data)).toEqual(answer.within);
    expect(answer.smallestChange).toBeCloseTo(1.96 * 1.2, 10);
  });

  it('agrees with its own checks where there is an effect, and where there is none', () => {
    const strong = fitted({ within: 1, noise: 0.5, horses: 12, seed: 3 });
    expect(strong.checks.permutation.p).toBeLessThan(0.02);
    expect(strong.within.p).toBeLessThan(0.001);
    expect(strong.checks.robust.lower).toBeGreaterThan(0);
    const none = fitted({ within: 0, horses: 12, seed: 3 });
    expect(none.checks.permutation.p).toBeGreaterThan(0.05);
    expect(none.within.p).toBeGreaterThan(0.05);
  });

  it('leaves out each horse in turn, and shows one that carries the effect', () => {
    const data = intervalRows({ within: 0, horses: 10, noise: 0.3 });
    const first = data.horse.map((name) => name === 'h3');
    const weeks = data.end.map((day, i) => (day - data.start[i]) / 7);
    const change = data.change.map((value, i) => (first[i] ? value + 3 * (weeks[i] - 7) : value));
    const { checks, within } = intervalModel(changed(data, { change }), quick) as IntervalFit;
    expect(checks.without.map(({ horse }) => horse)).toEqual([...new Set(data.horse)]);
    const furthest = [...checks.without].sort(
      (a, b) => Math.abs(b.estimate - within.estimate) - Math.abs(a.estimate - within.estimate),
    )[0];
    expect(furthest.horse).toBe('h3');
    expect(checks.ownSlopesP).toBeLessThan(0.01);
  });

  it('allows for horses that differ in their slopes when asked to', () => {
    const data = intervalRows({ horses: 12, noise: 0.4 });
    const slope = (name: string) => (Number(name.slice(1)) % 3) - 1;
    const change = data.change.map(
      (value, i) => value + slope(data.horse[i]) * ((data.end[i] - data.start[i]) / 7 - 7),
    );
    const rows = changed(data, { change });
    const [one, own] = [false, true].map((ownSlopes) => intervalModel(rows, { ...quick, ownSlopes }) as IntervalFit);
    expect(own.within.se).toBeGreaterThan(1.5 * one.within.se);
    expect(own.within.df).toBeLessThan(one.within.df);
    expect(own.random.map(({ term }) => term)).toContain('interval_within');
  });

  it('tells when a foot’s state at the start went with how soon it was seen again', () => {
    const data = intervalRows({ horses: 10 });
    const weeks = data.end.map((day, i) => (day - data.start[i]) / 7);
    const sooner = changed(data, { atStart: weeks.map((value) => 12 - value) });
    const { soonerWhenBad } = (intervalModel(sooner, quick) as IntervalFit).checks;
    expect(soonerWhenBad.days).toBeCloseTo(-7, 6);
    expect(soonerWhenBad.p).toBeLessThan(0.01);
    expect(fitted({ horses: 10 }).checks.soonerWhenBad.p).toBeGreaterThan(0.05);
  });

  it('is robust where its slope is said to be: a wild value moves the model more', () => {
    const data = intervalRows({ within: 0.5, noise: 0.2, horses: 10 });
    const weeks = data.end.map((day, i) => (day - data.start[i]) / 7);
    const longest = weeks.indexOf(Math.max(...weeks));
    const change = data.change.map((value, i) => (i === longest ? value + 60 : value));
    const wild = intervalModel(changed(data, { change }), quick) as IntervalFit;
    expect(Math.abs(wild.checks.robust.slope - 0.5)).toBeLessThan(0.15);
    expect(Math.abs(wild.within.estimate - 0.5)).toBeGreaterThan(0.3);
    expect(wild.checks.residuals.straightness).toBeLessThan(0.9);
  });

  it('gives the same for the same seed, tells how far it is, and stops when told', () => {
    expect(fitted({}, { seed: 5 })).toEqual(fitted({}, { seed: 5 }));
    const seen: number[] = [];
    let all = 0;
    intervalModel(intervalRows(), quick, (done, total) => {
      seen.push(done);
      all = total;
      return true;
    });
    expect(seen).toEqual(Array.from({ length: seen.length }, (_, i) => i + 1));
    expect(seen.length).toBeLessThanOrEqual(all);
    expect(() => intervalModel(intervalRows(), quick, (done) => done < 3)).toThrow(/was stopped/);
  });

  it('can be sent to a worker and back: data in, data out', () => {
    const data = intervalRows();
    expect(structuredClone(data)).toEqual(data);
    const answer = fitted();
    expect(structuredClone(answer)).toEqual(answer);
  });

  it('takes names that are words of the language as they are', () => {
    const data = intervalRows({ horses: 8 });
    const words = ['__proto__', 'constructor', '<script>', '=1+1', 'to String', 'h\u0000', '[x](y)', '**b**'];
    const horse = data.horse.map((name) => words[Number(name.slice(1))]);
    const answer = intervalModel(changed(data, { horse }), quick) as IntervalFit;
    expect(answer.kind).toBe('fitted');
    expect(answer.checks.without.map((each) => each.horse)).toEqual(words);
    expect(answer.within.estimate).toBeCloseTo(fitted().within.estimate, 8);
  });
});

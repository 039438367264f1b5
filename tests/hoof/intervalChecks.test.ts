import { describe, expect, it } from 'vitest';
import type { IntervalData } from '../../lib/hoof/intervalData.ts';
import { horseTerm, type IntervalDesign, intervalDesign } from '../../lib/hoof/intervalDesign.ts';
import { type IntervalFit, intervalEffect, intervalModel } from '../../lib/hoof/intervalModel.ts';
import { chiSquared, mixedModel, permuteWithin, theilSenWithin } from '../../lib/stats/index.ts';
import { changed, intervalRows } from './intervalRows.ts';

const quick = { draws: 199 };
const modelOf = (data: IntervalData, options = {}) => intervalModel(data, { ...quick, ...options }) as IntervalFit;
const designOf = (data: IntervalData) => intervalDesign(data, false) as IntervalDesign;

/** One foot a horse, nothing known but the lengths: a base, the weeks within a horse and its mean. */
const alone = (() => {
  const data = intervalRows({ horses: 6, visits: 5, limbs: ['LF'], seed: 7 });
  const unknown = data.horse.map(() => '');
  return changed(data, { season: unknown, shod: unknown, farrier: unknown });
})();
const fitAlone = () => modelOf(alone);
const coefficient = (fit: IntervalFit, term: string): number => fit.terms.find((each) => each.term === term)!.estimate;

describe('what the model makes of each row', () => {
  it('is the outcome less all but the length of the interval within the horse', () => {
    const fit = fitAlone();
    expect(fit.terms.map(({ term }) => term)).toEqual(['(Intercept)', 'interval_within', 'interval_mean']);
    const others = fit.weeksMean.map(
      (weeks) => coefficient(fit, '(Intercept)') + coefficient(fit, 'interval_mean') * weeks,
    );
    const usual = others.reduce((sum, value) => sum + value, 0) / fit.n;
    expect(fit.usual).toBeCloseTo(usual, 9);
    for (const [i, value] of fit.adjusted.entries()) expect(value).toBeCloseTo(usual + alone.change[i] - others[i], 9);
  });

  it('comes with the middle of the errors of its changes', () => {
    const changeError = alone.changeError.map((_, i) => i);
    // The middle of 0 to 29.
    expect(modelOf(changed(alone, { changeError })).smallestChange).toBeCloseTo(1.96 * 14.5, 10);
  });
});

describe('a model without comparison between horses', () => {
  const weeks = (i: number) => [5, 8, 6, 7, 9][i % 5];
  const same = changed(alone, { end: alone.start.map((day, i) => day + 7 * weeks(i)) });

  it('has none where all horses have the same usual interval', () => {
    const fit = fitAlone();
    expect(modelOf(same).between).toBeUndefined();
    expect(fit.between).toMatchObject({ estimate: coefficient(fit, 'interval_mean') });
  });
});

describe('the checks of the model', () => {
  const two = intervalRows({ horses: 6, visits: 5, seed: 7 });

  it('shuffle whole intervals, the feet of one averaged', () => {
    const { adjusted, checks, weeksWithin } = modelOf(two);
    const halves = Array.from({ length: two.horse.length / 2 }, (_, i) => 2 * i);
    const direct = permuteWithin(
      halves.map((i) => weeksWithin[i]),
      halves.map((i) => (adjusted[i] + adjusted[i + 1]) / 2),
      halves.map((i) => Number(two.horse[i].slice(1))),
      { seed: 1, ...quick },
    );
    expect(checks.permutation).toEqual({ p: direct.p, arrangements: direct.total, exact: direct.exact });
  });

  it('hold the size at the start against the days that follow, the feet of one averaged', () => {
    const signed = changed(two, { atStart: two.atStart.map((value, i) => (i % 3 === 0 ? -value : value)) });
    const { checks, weeksWithin } = modelOf(signed);
    const halves = Array.from({ length: two.horse.length / 2 }, (_, i) => 2 * i);
    const direct = permuteWithin(
      halves.map((i) => (two.atStart[i] + two.atStart[i + 1]) / 2),
      halves.map((i) => 7 * weeksWithin[i]),
      halves.map((i) => Number(two.horse[i].slice(1))),
      { seed: 1, ...quick },
    );
    expect(checks.soonerWhenBad.days).toBeCloseTo(direct.slope, 9);
    expect(checks.soonerWhenBad.p).toBe(direct.p);
  });

  it('take the robust slope over the intervals of one foot, horses drawn as wholes', () => {
    const { checks, weeksWithin } = modelOf(two, { seed: 3 });
    const feet = Float64Array.from(two.horse, (name, i) => 2 * Number(name.slice(1)) + (two.limb[i] === 'LF' ? 0 : 1));
    const clusters = Float64Array.from(two.horse, (name) => Number(name.slice(1)));
    const { slope, lower, upper } = theilSenWithin(weeksWithin, two.change, feet, { clusters, seed: 3 });
    expect(checks.robust).toEqual({ slope, lower, upper });
  });

  it('fit smaller models without each circumstance and without all of them', () => {
    const { checks } = modelOf(two);
    const { columns, fixed, random } = designOf(two);
    const without = (names: readonly string[]) =>
      mixedModel(columns, {
        response: 'change',
        fixed: fixed.filter((name) => !names.includes(name)),
        random,
      }).fixed.find(({ term }) => term === 'interval_within')!;
    expect(checks.other.map(({ model }) => model)).toEqual([
      'without season',
      'without shod',
      'without farrier',
      'without season, shod and farrier',
    ]);
    const lists = [['season'], ['shod'], ['farrier'], ['season', 'shod', 'farrier']];
    for (const [i, names] of lists.entries()) {
      const { estimate, lower, upper } = without(names);
      expect(checks.other[i]).toMatchObject({ estimate, lower, upper });
    }
  });

  it('fit one smaller model where there is one circumstance, and none where there is none', () => {
    const fit = fitAlone();
    const one = changed(alone, { shod: intervalRows({ horses: 6, visits: 5, limbs: ['LF'] }).shod });
    expect(modelOf(one).checks.other.map(({ model }) => model)).toEqual(['without shod']);
    expect(fit.checks.other).toEqual([]);
  });

  it('leave many farriers out of the groups that vary', () => {
    const fit = fitAlone();
    const farriers = changed(alone, { farrier: alone.farrier.map((_, i) => `farrier ${i % 6}`) });
    const { checks, random } = modelOf(farriers);
    expect(random.map(({ by }) => by)).toContain('farrier');
    expect(checks.other).toMatchObject([{ model: 'without farrier' }]);
    expect(checks.other[0].estimate).toBeCloseTo(fit.within.estimate, 6);
  });

  it('ask whether horses differ in their slopes by half the p of the likelihood ratio', () => {
    const fit = fitAlone();
    const slopes = changed(alone, {
      change: alone.change.map((value, i) => value + (Number(alone.horse[i].slice(1)) % 3) * fit.weeksWithin[i]),
    });
    const { columns, fixed } = designOf(slopes);
    const criterion = (ownSlopes: boolean) =>
      mixedModel(columns, { response: 'change', fixed: [...fixed], random: [horseTerm(ownSlopes)], method: 'ML' })
        .criterion;
    const p = chiSquared.upper(criterion(false) - criterion(true), 1) / 2;
    expect(p).toBeLessThan(0.4);
    expect(modelOf(slopes).checks.ownSlopesP).toBeCloseTo(p, 12);
  });
});

it('an effect alone allows for slopes of its own where asked, and says where there is too little', () => {
  const own = intervalEffect(alone, { ownSlopes: true });
  expect(own).toEqual(modelOf(alone, { ownSlopes: true }).within);
  expect(intervalEffect(intervalRows({ horses: 1 }))).toMatchObject({ kind: 'too little' });
});

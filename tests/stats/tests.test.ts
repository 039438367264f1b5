import { describe, expect, it } from 'vitest';
import { anova } from '../../lib/stats/anova.ts';
import { benjaminiHochberg, benjaminiYekutieli } from '../../lib/stats/benjaminiHochberg.ts';
import { bonferroni, holm } from '../../lib/stats/holm.ts';
import { correlationTest, pearson } from '../../lib/stats/pearson.ts';
import { pairedTTest, tTest, tTestFromSummary, welchTest } from '../../lib/stats/tTest.ts';

describe('anova', () => {
  it('of two groups is the square of Student’s t', () => {
    const found = anova([
      [1, 2, 3],
      [4, 5, 6],
    ]);
    expect(found).toMatchObject({ n: 6, missing: 0, groups: 2, F: 13.5 });
    expect(found.between).toEqual({ df: 1, ss: 13.5, ms: 13.5 });
    expect(found.within).toEqual({ df: 4, ss: 4, ms: 1 });
    expect(found.rSquared).toBeCloseTo(13.5 / 17.5, 14);
    expect(found.residualSd).toBe(1);
  });
  it('leaves out missing values and empty groups, and takes groups of any size', () => {
    const found = anova([[1, NaN], [], [2, 4], [NaN]]);
    expect([found.n, found.missing, found.groups]).toEqual([3, 2, 2]);
    expect([found.between.df, found.within.df]).toEqual([1, 1]);
    expect(found.within.ss).toBe(2);
    expect(found.between.ss).toBeCloseTo(8 / 3, 14);
  });
  it('has no F of one group, of single values, or of nothing', () => {
    expect(anova([[1, 2]]).F).toBeNaN();
    expect(anova([[1], [2]]).F).toBeNaN();
    expect(anova([]).F).toBeNaN();
    expect(anova([]).n).toBe(0);
  });
});

describe('t tests', () => {
  it('paired is one sample of differences, with whole pairs only', () => {
    const found = pairedTTest([3, 5, 8, 1], [1, 4, 4, NaN]);
    expect(found).toMatchObject({ n: 3, missing: 1, df: 2 });
    expect(found.t).toBe(tTest([2, 1, 4]).t);
    expect(found.p).toBe(tTest([2, 1, 4]).p);
  });
  it('turns over with the sign and its interval holds the mean', () => {
    const [up, down] = [tTest([1, 2, 4, NaN]), tTest([-1, -2, -4])];
    expect(up.t).toBe(-down.t);
    expect(up.p).toBe(down.p);
    expect([up.n, up.missing]).toEqual([3, 1]);
    expect(up.lower).toBeCloseTo(-down.upper, 14);
    expect(tTest([1, 2, 4], 0.5).upper).toBeLessThan(up.upper);
  });
  it('of fewer than two there is none', () => {
    expect([tTest([1]).t, tTest([1]).p, tTest([1]).lower, tTest([]).mean]).toEqual([NaN, NaN, NaN, NaN]);
  });
  it('from a printed mean and standard error', () => {
    expect(tTestFromSummary(2, 1, Infinity)).toMatchObject({ t: 2, df: Infinity });
    expect(tTestFromSummary(2, 1, Infinity).upper).toBeCloseTo(2 + 1.959964, 6);
  });
  it('Welch’s with groups that vary alike and are as large has the pooled degrees of freedom', () => {
    expect(welchTest([1, 2, 3], [11, 12, 13]).df).toBeCloseTo(4, 12);
    expect(welchTest([1, 2, 3, NaN], [11, 12, 13])).toMatchObject({ mean: -10, missing: 1 });
    expect(welchTest([1], [2, 3]).t).toBeNaN();
  });
});

describe('pearson', () => {
  it('is 1 on a rising line, −1 on a falling one, and NaN where nothing varies', () => {
    expect(pearson([1, 2, 3], [10, 20, 30]).r).toBe(1);
    expect(pearson([1, 2, 3], [10, 20, 30]).p).toBe(0);
    expect(pearson([1, 2, 3], [3, 2, 1]).r).toBe(-1);
    expect(pearson([1, 2, 3], [5, 5, 5]).r).toBeNaN();
  });
  it('limits by Fisher’s z, which three pairs don’t have', () => {
    // z = atanh(0.5) ± 1.959964 / √25
    expect(correlationTest(0.5, 28).lower).toBeCloseTo(Math.tanh(Math.atanh(0.5) - 0.3919928), 6);
    expect(correlationTest(0.5, 28).upper).toBeCloseTo(Math.tanh(Math.atanh(0.5) + 0.3919928), 6);
    expect(correlationTest(0.5, 3).lower).toBeNaN();
    expect(correlationTest(0.5, 3).p).toBeCloseTo(2 / 3, 12);
    expect(correlationTest(0.5, 2).p).toBeNaN();
  });
  it('takes whole pairs only', () => {
    expect(pearson([1, NaN, 3, 4], [1, 2, 3, NaN])).toMatchObject({ n: 2, missing: 2, df: 0 });
  });
});

describe('several questions at once', () => {
  it('adjusted p-values keep their order and never pass one', () => {
    const p = [0.9, 0.001, 0.04, 0.04, 0.5];
    for (const adjust of [benjaminiHochberg, benjaminiYekutieli, holm, bonferroni]) {
      const adjusted = adjust(p);
      adjusted.forEach((value, i) => {
        expect(value).toBeGreaterThanOrEqual(p[i]);
        expect(value).toBeLessThanOrEqual(1);
      });
      expect(adjusted[2]).toBe(adjusted[3]);
      expect(adjusted[1]).toBe(Math.min(...adjusted));
      expect(adjust([NaN, 0.2])).toEqual([NaN, expect.closeTo(0.2, 12)]);
      expect(adjust([])).toEqual([]);
    }
  });
  it('one question alone stays as it is', () => {
    for (const adjust of [benjaminiHochberg, benjaminiYekutieli, holm, bonferroni])
      expect(adjust([0.03])).toEqual([0.03]);
  });
});

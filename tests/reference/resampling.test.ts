import { describe, expect, it } from 'vitest';
import { bcaLimits, bootstrapLimits } from '../../lib/stats/bootstrapLimits.ts';
import { clusterBootstrap } from '../../lib/stats/clusterBootstrap.ts';
import { mean } from '../../lib/stats/mean.ts';
import { median } from '../../lib/stats/median.ts';
import type { PermutationTest } from '../../lib/stats/permutationTest.ts';
import { permuteTwoGroups } from '../../lib/stats/permuteTwoGroups.ts';
import { permuteWithin } from '../../lib/stats/permuteWithin.ts';
import { sd } from '../../lib/stats/sd.ts';
import { signFlip } from '../../lib/stats/signFlip.ts';
import { tTest, welchTest } from '../../lib/stats/tTest.ts';
import { closeTo, readCase, readData } from './stats/read.ts';

/** A p from m random arrangements lies within four of its standard errors. */
function nearExact(drawn: PermutationTest, p: number): void {
  expect(drawn.exact).toBe(false);
  closeTo(drawn.p, p, 0, 4 * Math.sqrt((p * (1 - p)) / drawn.total));
}

describe('Student’s ten patients', () => {
  const expected = readCase('student-sleep');
  const { difference } = readData('student-sleep').numbers;
  it('all 1,024 sign patterns', () => {
    const found = signFlip(difference);
    expect([found.n, found.total, found.exact]).toEqual([10, expected.patterns, true]);
    expect(found.atLeastAsFar).toBe(expected.at_least_as_far);
    expect(found.atLeastAsLarge).toBe(expected.at_least_as_large);
    expect(found.p).toBe(expected.exact_sign_flip_p_two_sided);
    expect(found.p).toBe(expected.exactRankTests.p);
    expect(found.pGreater).toBe(expected.exact_sign_flip_p_greater);
    expect(found.pLess).toBe(expected.exact_sign_flip_p_less);
    closeTo(found.mean, expected.mean, 1e-12);
  });
  it('random sign patterns come near', () => {
    nearExact(signFlip(difference, { exactUpTo: 1000, draws: 20000, seed: 5 }), expected.exact_sign_flip_p_two_sided);
  });
  it('Student’s own test', () => {
    const found = tTest(difference);
    closeTo([found.t, found.p], [expected.t, expected.p], 1e-9);
    closeTo([found.lower, found.upper], expected.ci95, 1e-9);
    expect(found.df).toBe(expected.df);
  });
});

describe('the same readings as if unpaired', () => {
  const expected = readCase('student-sleep-two-groups');
  const { group, extra } = readData('student-sleep-two-groups').numbers;
  const [first, second] = [1, 2].map((label) => extra.filter((_, row) => group[row] === label));
  it('all 184,756 splits', () => {
    const found = permuteTwoGroups(second, first);
    expect([found.total, found.exact]).toEqual([expected.arrangements, true]);
    expect(found.atLeastAsFar).toBe(expected.at_least_as_far);
    closeTo(found.p, expected.exact_p_two_sided, 1e-12);
    closeTo(found.p, expected.coin.p, 1e-12);
    closeTo(found.difference, expected.mean_difference, 1e-12);
  });
  it('random splits come near', () => {
    nearExact(permuteTwoGroups(second, first, { exactUpTo: 1000, draws: 20000 }), expected.exact_p_two_sided);
  });
  it('Welch’s test', () => {
    const found = welchTest(first, second);
    closeTo([found.t, found.df, found.p], [expected.welch.t, expected.welch.df, expected.welch.p], 1e-9);
  });
});

describe('a slope within three children', () => {
  const expected = readCase('shuffle-within');
  const { numbers, text } = readData('shuffle-within');
  const child = text.child.map((name) => text.child.indexOf(name));
  it('all 24³ shuffles', () => {
    const found = permuteWithin(numbers.age, numbers.distance, child);
    expect([found.total, found.exact, found.groups]).toEqual([expected.arrangements, true, 3]);
    expect(found.atLeastAsFar).toBe(expected.at_least_as_far);
    expect(found.atLeastAsLarge).toBe(expected.at_least_as_large);
    closeTo(found.slope, expected.slope, 1e-12);
    closeTo([found.p, found.pGreater], [expected.exact_p_two_sided, expected.exact_p_greater], 1e-12);
  });
  it('random shuffles come near', () => {
    const drawn = permuteWithin(numbers.age, numbers.distance, child, { exactUpTo: 1000, draws: 50000, seed: 2 });
    nearExact(drawn, expected.exact_p_two_sided);
  });
});

describe('the bootstrap of city sizes, on given replicates', () => {
  const expected = readCase('bootstrap-city');
  const { u, x } = readData('bootstrap-city').numbers;
  const ratio = (rows: ArrayLike<number>) => {
    const total = (column: number[]) => Array.from(rows, (row) => column[row]).reduce((sum, value) => sum + value, 0);
    return total(x) / total(u);
  };
  it('normal, basic and percentile limits, bias and standard error', () => {
    for (const kind of ['normal', 'basic', 'percentile'] as const)
      for (const { level, low, high } of expected[kind]) {
        const { lower, upper } = bootstrapLimits(expected.replicates, expected.observed, level)[kind];
        closeTo([lower, upper], [low, high], 1e-9);
      }
    const { bias, se } = bootstrapLimits(expected.replicates, expected.observed);
    closeTo([bias, se], [expected.bias, expected.se], 1e-9);
  });
  it('BCa limits with the jackknife’s acceleration', () => {
    expected.bca_jackknife_acceleration.forEach((c: { level: number; low: number; high: number }, i: number) => {
      const found = bcaLimits(expected.replicates, expected.observed, expected.jackknife_values, c.level);
      closeTo([found.lower, found.upper], [c.low, c.high], 1e-9);
      closeTo([found.z0, found.acceleration], [expected.z0, expected.acceleration_jackknife], 1e-9);
      closeTo(found.probabilities, expected.bca_adjusted_probabilities[i].adjusted_probabilities, 1e-9);
    });
  });
  it('our own draws: the same jackknife, and a standard error near that of R’s draws', () => {
    const found = clusterBootstrap(
      u.map((_, row) => row),
      ratio,
      { draws: 4000, seed: 3 },
    );
    closeTo(found.observed, expected.observed, 1e-12);
    closeTo(found.jackknife, expected.jackknife_values, 1e-12);
    closeTo(found.se, expected.se, 0.08);
  });
});

it('a random bootstrap comes near the exact one of six numbers', () => {
  const expected = readCase('bootstrap-exact');
  const rows = expected.data.map((_: number, row: number) => row);
  const of = (statistic: (values: number[]) => number) =>
    clusterBootstrap(rows, (drawn) => statistic(Array.from(drawn, (row) => expected.data[row])), {
      draws: 20000,
      seed: 11,
    });
  const means = of(mean);
  closeTo(means.observed, expected.mean.observed, 1e-12);
  closeTo(means.se, expected.mean.exact_se, 0.02);
  closeTo([means.percentile.lower, means.percentile.upper], [2.3166666666666664, 4.533333333333333], 0, 0.04);
  const medians = of(median);
  closeTo(medians.observed, expected.median.observed, 1e-12);
  closeTo(sd(medians.replicates), expected.median.exact_se, 0.02);
  closeTo(medians.observed + medians.bias, expected.median.exact_mean, 0.02);
});

import { describe, expect, it } from 'vitest';
import { anova } from '../../lib/stats/anova.ts';
import { concordance } from '../../lib/stats/concordance.ts';
import { type Icc, icc } from '../../lib/stats/icc.ts';
import { limitsOfAgreement, sdOfSingleDifferences } from '../../lib/stats/limitsOfAgreement.ts';
import { pearson } from '../../lib/stats/pearson.ts';
import { repeatability } from '../../lib/stats/repeatability.ts';
import { sd } from '../../lib/stats/sd.ts';
import { closeTo, readCase, readData } from './stats/read.ts';

/** Rows of a table, from the columns that are named. */
function matrix(columns: Record<string, number[]>, names: readonly string[]): number[][] {
  return columns[names[0]].map((_, row) => names.map((name) => columns[name][row]));
}

const lancet = readCase('bland-altman-1986');
const meters = readData('bland-altman-1986').numbers;

describe('Bland & Altman 1986, seventeen people with two meters', () => {
  const expected = lancet.first_readings;
  const found = limitsOfAgreement(meters.wright1, meters.mini1);
  it('bias, its error and its interval', () => {
    expect(found.n).toBe(expected.n);
    closeTo(found.mean, expected.mean_difference, 1e-9);
    closeTo(found.sd, expected.sd_difference, 1e-9);
    closeTo(found.se, expected.se_mean, 1e-9);
    closeTo(found.meanInterval, expected.ci_mean, 1e-9);
    closeTo(found.t, expected.t, 1e-9);
    closeTo(found.p, expected.p, 1e-9);
  });
  it('limits and their intervals by the 1999 paper', () => {
    closeTo([found.lower, found.upper], expected['limits_1.96sd'], 1e-9);
    closeTo(found.seLimit, expected.se_limit_1999, 1e-9);
    closeTo(found.lowerInterval, expected.ci_lower_limit_1999, 1e-9);
    closeTo(found.upperInterval, expected.ci_upper_limit_1999, 1e-9);
  });
  it('limits and their intervals by the 1986 paper', () => {
    closeTo([found.in1986.lower, found.in1986.upper], expected.limits_2sd, 1e-9);
    closeTo(found.in1986.seLimit, expected.se_limit_1986, 1e-9);
    closeTo(found.in1986.lowerInterval, expected.ci_lower_limit_1986, 1e-9);
    closeTo(found.in1986.upperInterval, expected.ci_upper_limit_1986, 1e-9);
  });
  it('and, to the digits the paper prints after rounding at each step, its own figures', () => {
    const { published } = lancet;
    expect(found.mean).toBeCloseTo(published.mean_difference, 1);
    expect(found.sd).toBeCloseTo(published.sd_difference, 1);
    closeTo([found.in1986.lower, found.in1986.upper], published.limits_2sd, 0, 0.3);
    closeTo(found.in1986.lowerInterval, published.ci_lower_limit, 0, 0.3);
    closeTo(found.in1986.upperInterval, published.ci_upper_limit, 0, 0.3);
  });
  it('the trend of the difference with the mean', () => {
    const trend = expected.difference_on_mean;
    closeTo(found.trend.estimate, trend.slope, 1e-9);
    closeTo(found.trend.se, trend.slope_se, 1e-9);
    closeTo(found.trend.t, trend.slope_t, 1e-9);
    closeTo(found.trend.p, trend.slope_p, 1e-9);
  });
  it('Pearson and Lin', () => {
    const correlation = pearson(meters.wright1, meters.mini1);
    closeTo(correlation.r, expected.pearson_r, 1e-9);
    closeTo(correlation.p, expected.pearson_p, 1e-9);
    const agreement = concordance(meters.wright1, meters.mini1);
    closeTo(agreement.value, expected.lin_ccc, 1e-9);
    closeTo([agreement.lower, agreement.upper], [expected.lin_ccc_epiR.low, expected.lin_ccc_epiR.high], 1e-9);
  });
  it('limits of means of two readings, brought back to single readings', () => {
    const average = (a: number[], b: number[]) => a.map((value, row) => (value + b[row]) / 2);
    const { mean_difference, sd_difference, sd_difference_corrected_to_single_readings } = lancet.means_of_two;
    const means = limitsOfAgreement(average(meters.wright1, meters.wright2), average(meters.mini1, meters.mini2));
    closeTo(means.mean, mean_difference, 1e-9);
    closeTo(means.sd, sd_difference, 1e-9);
    const methods = [matrix(meters, ['wright1', 'wright2']), matrix(meters, ['mini1', 'mini2'])].map((readings) => ({
      withinSd: repeatability(readings).withinSd,
      readings: 2,
    }));
    closeTo(sdOfSingleDifferences(means.sd, methods), sd_difference_corrected_to_single_readings, 1e-9);
  });
});

/** What R finds in a table of repeats, against `repeatability`, `anova` and the one-way forms of `icc`. */
function repeats(readings: number[][], expected: ReturnType<typeof readCase>): void {
  const found = repeatability(readings);
  const table = anova(readings);
  const forms = icc(readings);
  expect(found.subjects).toBe(expected.subjects);
  expect([table.between.df, table.within.df]).toEqual([expected.anova.between.df, expected.anova.within.df]);
  closeTo([table.between.ss, table.between.ms], [expected.anova.between.ss, expected.anova.between.ms], 1e-9);
  closeTo([table.within.ss, table.within.ms], [expected.anova.within.ss, expected.anova.within.ms], 1e-9);
  closeTo([table.F, table.p], [expected.anova.between.F, expected.anova.between.p], 1e-9);
  closeTo(found.withinSd, expected.within_subject_sd, 1e-9);
  closeTo([found.lower, found.upper], expected.within_subject_sd_ci, 1e-9);
  closeTo(found.relativeSe, expected.se_relative, 1e-9);
  closeTo(found.error95, expected.error_95, 1e-9);
  closeTo(found.coefficient, expected.repeatability_coefficient, 1e-9);
  closeTo(found.withinSd / Math.sqrt(expected.repeats), expected.standard_error_of_mean_of_repeats, 1e-9);
  closeTo(found.betweenSd ** 2, expected.between_subject_variance, 1e-9);
  closeTo(found.coefficientOfVariation, expected.coefficient_of_variation_root_mean_square, 1e-9);
  closeTo(found.spreadOnMean.tau, expected.kendall_mean_sd.tau_b, 1e-9);
  closeTo(found.spreadOnMean.p, expected.kendall_mean_sd.p_normal, 1e-9);
  closeTo([forms.ICC1.value, forms.ICC1k.value], [expected.icc1, expected.icc1k], 1e-9);
  closeTo([forms.ICC1.lower, forms.ICC1.upper], expected.icc1_ci, 1e-9);
  const logs = readings.map((row) => row.map(Math.log));
  closeTo(repeatability(logs).withinSd, expected.log_within_subject_sd, 1e-9);
}

it('the two meters’ repeatability', () => {
  for (const meter of ['wright', 'mini']) {
    const expected = lancet.repeatability[meter];
    repeats(matrix(meters, [`${meter}1`, `${meter}2`]), expected.anova);
    const differences = meters[`${meter}1`].map((value, row) => value - meters[`${meter}2`][row]);
    closeTo(sd(differences), expected.sd_difference, 1e-9);
    const { withinSd } = repeatability(matrix(meters, [`${meter}1`, `${meter}2`]));
    closeTo(Math.SQRT2 * withinSd, expected.sd_difference_about_zero, 1e-9);
    closeTo(2 * Math.SQRT2 * withinSd, expected.coefficient_of_repeatability, 1e-9);
  }
});

it('Bland & Altman 1996, twenty children with four readings', () => {
  const columns = readData('bland-altman-1996').numbers;
  const expected = readCase('bland-altman-1996');
  const readings = matrix(columns, ['reading1', 'reading2', 'reading3', 'reading4']);
  repeats(readings, expected);
  closeTo(readings.map(sd), expected.row_sd, 1e-9);
  const { withinSd, error95, coefficient } = repeatability(readings);
  expect(withinSd).toBeCloseTo(expected.published.within_subject_sd, 1);
  expect(error95).toBeCloseTo(expected.published.error_95, 0);
  closeTo(coefficient, expected.published.repeatability_coefficient, 0, 0.6);
});

it('Shrout & Fleiss 1979, six targets by four judges', () => {
  const expected = readCase('shrout-fleiss');
  const found = icc(matrix(readData('shrout-fleiss').numbers, ['J1', 'J2', 'J3', 'J4']));
  expect([found.n, found.k, found.missing]).toEqual([6, 4, 0]);
  for (const row of expected.icc) {
    const form = found[row.type as keyof Icc] as Icc['ICC1'];
    expect([form.df1, form.df2]).toEqual([row.df1, row.df2]);
    closeTo([form.value, form.F, form.p], [row.ICC, row.F, row.p], 1e-9);
    closeTo([form.lower, form.upper], [row.low, row.high], 1e-9);
    expect(form.value).toBeCloseTo(expected.published[row.type], 2);
  }
  const { target, judge, residual, within } = expected.mean_squares;
  const { meanSquares } = found;
  closeTo(
    [meanSquares.subjects, meanSquares.observers, meanSquares.residual, meanSquares.within],
    [target, judge, residual, within],
    1e-9,
  );
  closeTo([found.semAgreement, found.semConsistency], [expected.sem_agreement, expected.sem_consistency], 1e-9);
});

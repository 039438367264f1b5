import { describe, expect, it } from 'vitest';
import { anova } from '../../lib/stats/anova.ts';
import { autocorrelation } from '../../lib/stats/autocorrelation.ts';
import { linearRegression } from '../../lib/stats/linearRegression.ts';
import { mean } from '../../lib/stats/mean.ts';
import { sd } from '../../lib/stats/sd.ts';
import { readCase, readData } from './stats/read.ts';

/** How many digits agree, 15 at most; of a certified zero how many zeros follow the point. */
function digits(found: number, certified: number): number {
  if (found === certified) return 15;
  const error = certified === 0 ? Math.abs(found) : Math.abs(found - certified) / Math.abs(certified);
  return Math.min(15, -Math.log10(error));
}

function worst(found: readonly number[], certified: readonly number[]): number {
  return Math.min(...certified.map((value, i) => digits(found[i], value)));
}

// The file's figures are rounded to a tenth of a digit.
const rounding = 0.1;
// The relative error of a square is twice that of its root.
const ofSquare = Math.log10(2);

describe('univariate, at least the digits of a plain loop', () => {
  const cases = Object.entries(readCase('nist-univariate').cases as Record<string, ReturnType<typeof readCase>>);
  it.each(cases)('%s', (_, certified) => {
    const { y } = readData(certified.file.replace('.csv', '')).numbers;
    expect(y).toHaveLength(certified.n);
    const floor = certified.digits_plain_two_pass_gets;
    expect(digits(mean(y), certified.mean)).toBeGreaterThanOrEqual(floor.mean - rounding);
    expect(digits(sd(y), certified.sd)).toBeGreaterThanOrEqual(floor.sd - rounding);
    // No floor is given for it; the deviations it is made of have the digits of sd.
    expect(digits(autocorrelation(y), certified.lag1_autocorrelation)).toBeGreaterThanOrEqual(floor.sd - 0.5);
  });
});

describe('analysis of variance, at least the digits of a loop over values less the first', () => {
  const cases = Object.entries(readCase('nist-anova').cases as Record<string, ReturnType<typeof readCase>>);
  it.each(cases)('%s', (_, certified) => {
    const { group, y } = readData(certified.file.replace('.csv', '')).numbers;
    const groups = [...new Set(group)].map((label) => y.filter((_, row) => group[row] === label));
    const found = anova(groups);
    expect([found.n, found.groups]).toEqual([certified.n, certified.groups]);
    expect([found.between.df, found.within.df]).toEqual([certified.between.df, certified.within.df]);
    const reached = worst(
      [found.between.ss, found.between.ms, found.F, found.within.ss, found.within.ms, found.residualSd],
      [
        certified.between.ss,
        certified.between.ms,
        certified.between.F,
        certified.within.ss,
        certified.within.ms,
        certified.residual_sd,
      ],
    );
    expect(reached).toBeGreaterThanOrEqual(certified.digits_shifted_two_pass_gets - rounding);
    expect(digits(found.rSquared, certified.r_squared)).toBeGreaterThanOrEqual(
      certified.digits_shifted_two_pass_gets - rounding,
    );
  });
});

describe('linear regression, at least the digits of Householder reflections in R', () => {
  const cases = Object.entries(readCase('nist-linear').cases as Record<string, ReturnType<typeof readCase>>);
  it.each(cases)('%s', (_, certified) => {
    const { y, ...rest } = readData(certified.file.replace('.csv', '')).numbers;
    const intercept = certified.coefficients[0].name === 'B0';
    const powers = Array.from({ length: certified.coefficients.length - 1 }, (_, p) =>
      rest.x?.map((value) => Array.from({ length: p + 1 }, () => value).reduce((product, x) => product * x, 1)),
    );
    const found = linearRegression(certified.model.includes('powers') ? powers : Object.values(rest), y, { intercept });
    expect(found.dropped).toEqual([]);
    const floor = certified.digits_Householder_gets;
    const estimates = found.coefficients.map(({ estimate }) => estimate);
    const errors = found.coefficients.map(({ se }) => se);
    type Certified = { estimate: number; sd: number };
    expect(
      worst(
        estimates,
        certified.coefficients.map((c: Certified) => c.estimate),
      ),
    ).toBeGreaterThanOrEqual(floor.estimate - rounding);
    expect(
      worst(
        errors,
        certified.coefficients.map((c: Certified) => c.sd),
      ),
    ).toBeGreaterThanOrEqual(floor.sd - rounding);
    expect([found.n, found.residual.df, found.regression.df]).toEqual([
      certified.n,
      certified.residual.df,
      certified.regression.df,
    ]);
    expect(digits(found.residualSd, certified.residual_sd)).toBeGreaterThanOrEqual(floor.sd - rounding);
    const squares = [found.rSquared, found.residual.ss, found.regression.ss];
    const wanted = [certified.r_squared, certified.residual.ss, certified.regression.ss];
    expect(worst(squares, wanted)).toBeGreaterThanOrEqual(floor.sd - rounding - ofSquare);
    if (certified.regression.F !== null)
      expect(digits(found.F, certified.regression.F)).toBeGreaterThanOrEqual(floor.sd - rounding - ofSquare);
  });
});

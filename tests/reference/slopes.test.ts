import { describe, expect, it } from 'vitest';
import { kendallTau } from '../../lib/stats/kendallTau.ts';
import { linearRegression } from '../../lib/stats/linearRegression.ts';
import { siegelSlope } from '../../lib/stats/siegelSlope.ts';
import { theilSen } from '../../lib/stats/theilSen.ts';
import { closeTo, readCase, readData } from './stats/read.ts';

function robust(x: number[], y: number[], expected: ReturnType<typeof readCase>): void {
  const found = theilSen(x, y, { level: 1 - expected.alpha });
  expect([found.n, found.pairs]).toEqual([expected.n, expected.slopes]);
  closeTo(found.slope, expected.slope, 1e-9);
  closeTo([found.lower, found.upper], expected.interval_rounded_ranks, 1e-9);
  closeTo(found.intercept, expected.intercept_median_of_residuals, 1e-9);
  closeTo(found.interceptOfMedians, expected.intercept_from_medians, 1e-9);
  const kendall = kendallTau(x, y);
  expect(kendall.s).toBe(expected.kendall_S);
  closeTo(kendall.tau, expected.kendall_tau_b, 1e-9);
  closeTo(kendall.p, expected.kendall_p_normal, 1e-9);
  closeTo(siegelSlope(x, y).slope, expected.siegel_repeated_median_slope, 1e-9);
}

it('Sen 1968: the printed slope and limits', () => {
  const { t, y } = readData('sen-1968').numbers;
  const expected = readCase('sen-1968');
  robust(t, y, expected);
  const { slope, low, high, level } = expected.published;
  const found = theilSen(t, y, { level });
  closeTo([found.slope, found.lower, found.upper], [slope, low, high], 1e-12);
});

describe('stopping distances of cars, with many ties', () => {
  const { speed, dist } = readData('cars').numbers;
  const expected = readCase('cars');
  it('Theil–Sen, Kendall and Siegel', () => {
    robust(speed, dist, expected.theil_sen);
    expect(theilSen(speed, dist).slope).toBe(expected.theil_sen_slope);
  });
  it('least squares', () => {
    const found = linearRegression(speed, dist, { names: ['speed'] });
    const { coef, se, r2, sigma } = expected.ols;
    closeTo(
      found.coefficients.map(({ estimate }) => estimate),
      [coef['(Intercept)'], coef.speed],
      1e-9,
    );
    closeTo(
      found.coefficients.map((coefficient) => coefficient.se),
      [se['(Intercept)'], se.speed],
      1e-9,
    );
    closeTo([found.rSquared, found.residualSd], [r2, sigma], 1e-9);
  });
});

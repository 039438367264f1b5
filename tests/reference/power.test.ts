import { describe, expect, it } from 'vitest';
import {
  detectableEffect,
  pairsNeeded,
  powerOfCorrelation,
  powerOfEstimate,
  powerOfF,
  powerOfMeans,
  slopeDesign,
} from '../../lib/stats/index.ts';
import { closeTo, readCase } from './stats/read.ts';

describe('power agrees with power.t.test of R', () => {
  // `power.t.test` leaves the far tail out; its fifth and sixth cases were asked for both.
  for (const [i, { n, delta, sd, alpha, power, type, sided }] of readCase('power-t').entries()) {
    const options = {
      level: alpha,
      sides: sided === 'one.sided' ? 1 : 2,
      bothTails: i === 4 || i === 5,
      design: type === 'Two-sample' ? 'two groups' : 'pairs',
    } as const;
    it(`${type}, ${n} of each, difference ${delta}`, () => {
      closeTo(powerOfMeans(n, delta, sd, options), power, 1e-9);
    });
    it(`${type}: ${n} are needed for a power of ${power}`, () => {
      closeTo(pairsNeeded(delta, sd, power, options), n, 1e-6);
    });
  }
});

describe('power agrees with the R package pwr', () => {
  const cases = readCase('power-pwr');

  it('two groups of one size', () => {
    for (const { n_each, d, power } of cases.t_two_sample)
      closeTo(powerOfMeans(n_each, d, 1, { design: 'two groups' }), power, 1e-9);
  });

  it('two groups of unlike size', () => {
    const { n1, n2, d, power } = cases.t_two_sample_unequal;
    closeTo(powerOfMeans(n1, d, 1, { design: 'two groups', other: n2 }), power, 1e-9);
  });

  it('correlations', () => {
    for (const { n, r, power } of cases.correlation) {
      closeTo(powerOfCorrelation(n, r), power, 1e-9);
      closeTo(powerOfCorrelation(n, -r), power, 1e-9);
    }
  });

  it('F tests', () => {
    closeTo(powerOfF(cases.F2.u, cases.F2.v, cases.F2.f2 * (cases.F2.u + cases.F2.v + 1)), cases.F2.power, 1e-9);
    const { groups, n_each, f, power } = cases.anova;
    closeTo(powerOfF(groups - 1, groups * (n_each - 1), groups * n_each * f ** 2), power, 1e-9);
  });

  it('Cohen’s printed 80 percent', () => {
    for (const [n, d] of [
      [64, 0.5],
      [26, 0.8],
      [393, 0.2],
    ])
      expect(powerOfMeans(n, d, 1, { design: 'two groups' }).toFixed(1)).toBe('0.8');
  });
});

describe('the power of a slope within limbs agrees with the full generalised least squares', () => {
  const { fixed_slope, random_slope } = readCase('power-slope');
  for (const one of fixed_slope) {
    it(`${one.horses} horses, ${one.visits} visits, one slope for all`, () => {
      const { se, df } = slopeDesign({
        groups: one.horses,
        units: one.limbs,
        places: one.within_values_for_one_limb,
        residualSd: one.sd_residual,
      });
      closeTo(se, one.se, 1e-9);
      expect(df).toBe(one.df);
      closeTo(powerOfEstimate(one.beta, se, df), one.power_both_tails, 1e-9);
      closeTo(powerOfEstimate(-one.beta, se, df), one.power_both_tails, 1e-9);
      closeTo(detectableEffect(se, df, 0.8), one.smallest_slope_for_80_percent, 1e-6);
    });
  }
  for (const one of random_slope) {
    it(`${one.horses} horses, ${one.visits} visits, a slope of its own for each`, () => {
      const { se, df } = slopeDesign({
        groups: one.horses,
        places: one.within_values,
        residualSd: one.sd_residual,
        slopeSd: one.sd_slope,
      });
      closeTo(se, one.se, 1e-9);
      expect(df).toBe(one.df);
      closeTo(powerOfEstimate(one.beta, se, df), one.power_both_tails, 1e-9);
    });
  }
});

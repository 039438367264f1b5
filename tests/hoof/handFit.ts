import type { IntervalData } from '../../lib/hoof/intervalData.ts';
import type { IntervalEstimate, IntervalFit } from '../../lib/hoof/intervalModel.ts';

const estimate = (value: number, se: number, p: number): IntervalEstimate => ({
  ...{ estimate: value, se, df: 12.34, t: value / se, p },
  ...{ lower: value - 2 * se, upper: value + 2 * se },
});

/** Five intervals of two horses, written by hand. */
export const handData: IntervalData = {
  ...{ outcome: 'wall_level_mm', unit: 'mm', size: true, compared: 'after to before' },
  horse: ['Kit', 'Kit', 'Kit', 'Moss', 'Moss'],
  limb: ['LF', 'RF', 'LF', 'LF', 'LF'],
  start: Float64Array.of(0, 0, 42, 0, 35),
  end: Float64Array.of(42, 42, 105, 35, 70),
  change: Float64Array.of(1, 2, 3, 4, 5),
  changeError: Float64Array.of(0.1, 0.2, 0.3, 0.4, 0.5),
  atStart: Float64Array.of(0, 1, 2, 3, 4),
  shod: ['shod', 'shod', 'shod', 'bare', 'bare'],
  farrier: ['A', 'A', 'A', 'B', 'B'],
  season: ['Jan–Mar', 'Jan–Mar', 'Apr–Jun', 'Jan–Mar', 'Jan–Mar'],
  leftOut: { unmeasured: 0, therapeutic: 0, otherMoments: 0 },
};

/** What a model might say of all of them but the fourth: numbers chosen to be told apart, not fitted. */
export const handFit: IntervalFit = {
  kind: 'fitted',
  terms: [
    { term: '(Intercept)', ...estimate(1.5, 0.25, 0.0004) },
    { term: 'interval_within', ...estimate(0.5, 0.2, 0.02) },
    { term: 'farrierB', ...estimate(9, 1, 0.5) },
  ],
  within: estimate(0.5, 0.2, 0.02),
  between: estimate(-0.3, 0.2, 0.3),
  random: [
    { by: 'horse:limb', term: '(Intercept)', sd: 0.75 },
    { by: 'horse', term: 'interval_within', sd: 0.125 },
  ],
  ...{ residualSd: 1.25, singular: false, dropped: [] },
  design: {
    fixed: ['interval_within', 'interval_mean', 'limb', 'season', 'shod', 'farrier'],
    random: [{ by: ['horse'] }],
    ...{ notKnown: [], farrierAs: 'fixed' },
  },
  ...{ n: 4, missing: 0, rSquared: { marginal: 0.2, conditional: 0.5 } },
  rows: Int32Array.of(0, 1, 2, 4),
  weeksWithin: Float64Array.of(-1, -1, 2, 0),
  weeksMean: Float64Array.of(7, 7, 7, 5),
  fitted: Float64Array.of(1.1, 1.9, 3.2, 4.8),
  residuals: Float64Array.of(-0.1, 0.1, -0.2, 0.2),
  adjusted: Float64Array.of(1, 2, 3, 4),
  ...{ usual: 2, smallestChange: 2.4 },
  checks: {
    permutation: { p: 0.0123, arrangements: 9999, exact: false },
    robust: { slope: 0.4, lower: 0.1, upper: 0.7 },
    without: [
      { horse: 'Moss', estimate: 0.6, se: 0.25 },
      { horse: 'Kit', estimate: 0.3, se: 0.35 },
      { horse: 'Fern', estimate: 0.4, se: 0.3 },
    ],
    other: [
      { model: 'without season', estimate: 0.3, lower: 0, upper: 1 },
      { model: 'without shod and farrier', estimate: 0.7, lower: 0, upper: 1 },
    ],
    ownSlopesP: 0.2,
    residuals: { sorted: Float64Array.of(0), expected: Float64Array.of(0), straightness: 0.995 },
    soonerWhenBad: { days: -1.26, p: 0.04 },
  },
};

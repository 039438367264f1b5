import { expect, it } from 'vitest';
import { correlationTest } from '../../lib/stats/pearson.ts';
import { repeatabilityCoefficient } from '../../lib/stats/repeatability.ts';
import { tTestFromSummary } from '../../lib/stats/tTest.ts';

it('p from the r and n that Antonioli 2023 prints', () => {
  // Its fifth pair, r = −0.553 with p = 0.049, does not follow from n = 19 and is left out.
  const printed = [
    [-0.457, 0.049],
    [0.69, 0.001],
    [0.669, 0.002],
    [0.488, 0.034],
  ];
  for (const [r, p] of printed) expect(correlationTest(r, 19).p).toBeCloseTo(p, 3);
  expect(correlationTest(-0.553, 19).p).toBeCloseTo(0.014, 3);
});

it('paired t from the mean and standard error that Malone & Davies 2012 print for eleven horses', () => {
  expect(tTestFromSummary(-1.5, 0.61, 10).p).toBeCloseTo(0.034, 3);
  expect(tTestFromSummary(-1.8, 0.57, 10).p).toBeCloseTo(0.01, 3);
});

it('the within-subject SD behind the tape’s repeatability coefficient of 1.8 mm, Decurnex 2009', () => {
  expect(1.8 / repeatabilityCoefficient(1)).toBeCloseTo(0.65, 2);
});

import { expect, it } from 'vitest';
import { benjaminiHochberg, benjaminiYekutieli } from '../../lib/stats/benjaminiHochberg.ts';
import { bonferroni, holm } from '../../lib/stats/holm.ts';
import { closeTo, readCase } from './stats/read.ts';

const expected = readCase('benjamini-hochberg');

it('the fifteen p-values of Benjamini & Hochberg 1995, as R adjusts them', () => {
  closeTo(benjaminiHochberg(expected.p), expected.adjusted, 1e-12);
  closeTo(benjaminiYekutieli(expected.p), expected.benjamini_yekutieli, 1e-12);
  closeTo(holm(expected.p), expected.holm, 1e-12);
  closeTo(bonferroni(expected.p), expected.bonferroni, 1e-12);
});

it('the paper’s own count: four rejected at 0.05, by Bonferroni three', () => {
  expect(benjaminiHochberg(expected.p).filter((p) => p <= 0.05)).toHaveLength(4);
  expect(bonferroni(expected.p).filter((p) => p <= 0.05)).toHaveLength(3);
});

it('missing and tied ones, as R adjusts them', () => {
  const { p, adjusted, holm: stepDown } = expected.with_missing_and_ties;
  const nulls = (found: number[]) => found.map((value) => (Number.isNaN(value) ? null : value));
  const present = (list: (number | null)[]) => list.filter((value) => value !== null);
  expect(nulls(benjaminiHochberg(p)).indexOf(null)).toBe(1);
  closeTo(present(nulls(benjaminiHochberg(p))), present(adjusted), 1e-12);
  closeTo(present(nulls(holm(p))), present(stepDown), 1e-12);
});

import { describe, expect, it } from 'vitest';
import { type IntervalFit, intervalModel } from '../../lib/hoof/intervalModel.ts';
import { horseTable, intervalTable, termTable, termWordsTable } from '../../lib/hoof/intervalTables.ts';
import {
  betweenSentence,
  checkSentences,
  effectSentence,
  errorSentence,
  explanationSentences,
  modelSentence,
  outcomeWords,
  pWords,
  singularSentence,
} from '../../lib/hoof/intervalWords.ts';
import { changed, intervalRows } from './intervalRows.ts';

const units = { length: 'mm', mass: 'kg' } as const;
const data = intervalRows({ within: 0.6, noise: 0.8, horses: 12 });
const fit = intervalModel(data, { draws: 99 }) as IntervalFit;
const withEffect = (estimate: number, se: number): IntervalFit => ({
  ...fit,
  within: { ...fit.within, estimate, se, lower: estimate - 2 * se, upper: estimate + 2 * se, p: 0.02 },
});
/** Words that would make a cause of what only went together, tell how to cut, or judge. */
const forbidden =
  /\b(caus(e|es|ed|ing)|because of the longer|leads? to|should be (trimmed|cut|lowered)|good farrier|bad farrier|better farrier)\b/i;

describe('the answer in words', () => {
  it('is a sentence that a rider can repeat', () => {
    expect(effectSentence(withEffect(0.42, 0.15), data, units)).toBe(
      'A week longer went with 0.42 mm more difference between inside and outside, seen from the front, within the same horse (95% interval +0.12 mm to +0.72 mm)',
    );
    expect(effectSentence(withEffect(-0.42, 0.15), data, { ...units, length: 'in' })).toMatch(
      /went with 0\.017 in less difference/,
    );
  });

  it('says when the intervals can’t tell an effect from none', () => {
    expect(effectSentence(withEffect(0.2, 0.2), data, units)).toMatch(/can’t tell that from none at all$/);
    expect(effectSentence(withEffect(0.5, 0.2), data, units)).not.toMatch(/can’t tell/);
  });

  it('says which way a signed outcome went', () => {
    const angle = { outcome: 'toe_angle_deg', unit: 'deg', size: false };
    expect(effectSentence(withEffect(-0.25, 0.1), angle, units)).toMatch(
      /^A week longer went with toe angle going 0\.25° further down, within/,
    );
    expect(outcomeWords({ outcome: 'my_own', unit: '1', size: true })).toBe('distance from zero of my_own');
    expect(outcomeWords({ outcome: 'heel_level_mm', unit: 'mm', size: true })).toMatch(/seen from behind/);
  });

  it('holds the effect against the error of measuring', () => {
    expect(errorSentence(withEffect(0.5, 0.1), data, units)).toMatch(
      /below 2\.4 mm .* longer by 5 weeks to pass that, so one foot at one visit can’t show it/,
    );
    expect(errorSentence(withEffect(3, 0.1), data, units)).toMatch(/a week longer goes with more than that/);
    expect(errorSentence(withEffect(0.01, 0.1), data, units)).toMatch(/more than a year/);
    expect(errorSentence({ ...fit, smallestChange: Number.NaN }, data, units)).toMatch(/isn’t known here/);
  });

  it('tells the comparison between horses apart from the one within', () => {
    expect(betweenSentence(fit, data, units)).toMatch(/^Between horses, .* compares horses and not intervals/);
    expect(betweenSentence({ ...fit, between: undefined }, data, units)).toMatch(/same usual interval/);
  });

  it('says a variance at zero in words, and nothing where there is none', () => {
    const flat = {
      ...fit,
      singular: true,
      residualSd: 1,
      random: [
        { by: 'horse:limb', term: '(Intercept)', sd: 0 },
        { by: 'horse', term: '(Intercept)', sd: 0.4 },
      ],
    };
    expect(singularSentence(flat)).toMatch(
      /no variation of its own between feet of a horse once .* answer and not a failure/,
    );
    expect(singularSentence({ ...flat, singular: false })).toBe('');
  });

  it('writes the model down so that it can be repeated', () => {
    const words = modelSentence(fit, data);
    for (const part of [
      'wall_level_mm',
      'after to before',
      `${fit.n} rows`,
      'beyond the mean of its horse',
      'Restricted maximum likelihood',
      'Satterthwaite',
    ])
      expect(words).toContain(part);
    expect(modelSentence({ ...fit, missing: 3 }, data)).toMatch(/3 rows left out/);
  });

  it('puts every check and explanation into a sentence without cause, cut or judgement', () => {
    const checks = checkSentences(fit, data, units);
    expect(checks).toHaveLength(5);
    expect(checks[0]).toMatch(/Shuffling.* p (below )?0\.\d+ \(99 drawn by lot\); the model says p/);
    const explanations = explanationSentences(fit, data, units);
    expect(explanations.join(' ')).toMatch(
      /Season, shoeing and farrier.*Were feet seen sooner because they were bad\?.*Which horses are seen how often/s,
    );
    expect(explanations.join(' ')).toMatch(/it is no score/);
    const all = [
      effectSentence(fit, data, units),
      ...checks,
      ...explanations,
      betweenSentence(fit, data, units),
      errorSentence(fit, data, units),
    ];
    for (const words of all) {
      expect(words).not.toMatch(forbidden);
      expect(words).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('warns where feet were seen sooner because they were bad, and where residuals or slopes are not as the model has them', () => {
    const { checks } = fit;
    const bad = {
      ...fit,
      checks: {
        ...checks,
        soonerWhenBad: { days: -3, p: 0.001 },
        ownSlopesP: 0.001,
        residuals: { ...checks.residuals, straightness: 0.8 },
      },
    };
    expect(explanationSentences(bad, data, units).join(' ')).toMatch(
      /3\.0 days shorter .*can’t be told apart from that/,
    );
    const words = checkSentences(bad, data, units).join(' ');
    expect(words).toMatch(/not spread like a normal distribution/);
    expect(words).toMatch(/Horses differ in their slopes\*\* \(p 0\.001\)/);
    const good = checkSentences(
      { ...fit, checks: { ...checks, ownSlopesP: 0.4, residuals: { ...checks.residuals, straightness: 0.999 } } },
      data,
      units,
    ).join(' ');
    expect(good).toMatch(/much like a normal distribution.*Not so that these intervals would show it/);
  });

  it('keeps a horse’s name out of the markup', () => {
    const named = {
      ...fit,
      checks: { ...fit.checks, without: fit.checks.without.map((each, i) => ({ ...each, horse: `**h${i}**` })) },
    };
    expect(checkSentences(named, data, units).join(' ')).toContain('\\*\\*h');
  });

  it('writes small p as small', () => {
    expect([0.04321, 0.0004, 1].map(pWords)).toEqual(['0.043', 'below 0.001', '1.000']);
  });
});

describe('the tables', () => {
  it('have a row a term, without what the model gives for single farriers', () => {
    const table = termTable(data, fit);
    expect(table.term.values).toEqual([
      '(Intercept)',
      'interval_within',
      'interval_mean',
      'limbRF',
      'seasonJan–Mar',
      'shodshod',
      'horse:interval (Intercept)',
      'horse:limb (Intercept)',
      'horse (Intercept)',
      'residual',
    ]);
    expect(table.estimate_mm.unit).toBe('mm');
    expect(table.estimate_mm.values[1]).toBe(fit.within.estimate);
    expect(Array.from(table.standard_deviation_mm.values as Float64Array).at(-1)).toBe(fit.residualSd);
    expect(JSON.stringify(termWordsTable(data, fit, units))).not.toMatch(/farrier/);
    expect(termWordsTable(data, fit, units).term.values).toContain('a week longer, within the same horse');
  });

  it('have a row a horse and a row an interval, and lengths that add up', () => {
    const horses = horseTable(data, fit);
    expect(horses.horse_id.values).toHaveLength(12);
    expect(Array.from(horses.intervals.values as Float64Array).every((count) => count === 6)).toBe(true);
    expect(Array.from(horses.feet.values as Float64Array).every((count) => count === 2)).toBe(true);
    const intervals = intervalTable(data, fit);
    expect(intervals.horse_id.values).toHaveLength(fit.n);
    const [within, mean, start, end] = ['interval_within_weeks', 'interval_mean_weeks', 'start_date', 'end_date'].map(
      (name) => intervals[name].values as Float64Array,
    );
    for (let i = 0; i < fit.n; i++) expect(7 * (within[i] + mean[i])).toBeCloseTo(end[i] - start[i], 8);
  });

  it('name no unit where the outcome has none', () => {
    const pure = changed(data, { outcome: 'frog_ratio', unit: '1' });
    expect(Object.keys(termTable(pure, fit))).toContain('estimate');
  });
});

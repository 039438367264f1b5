import { describe, expect, it } from 'vitest';
import type { IntervalChecks, IntervalFit } from '../../lib/hoof/intervalModel.ts';
import {
  betweenSentence,
  checkSentences,
  effectSentence,
  errorSentence,
  explanationSentences,
  groupName,
  limitsInWords,
  modelSentence,
  outcomeWords,
  pWords,
  quantity,
  singularSentence,
  termWords,
} from '../../lib/hoof/intervalWords.ts';
import { handData, handFit } from './handFit.ts';

const units = { length: 'mm', mass: 'kg' } as const;
const angle = { outcome: 'toe_angle_deg', unit: 'deg', size: false };
const within = (estimate: number, lower: number, upper: number): IntervalFit => ({
  ...handFit,
  within: { ...handFit.within, estimate, lower, upper },
});
const checked = (more: Partial<IntervalChecks>): IntervalFit => ({
  ...handFit,
  checks: { ...handFit.checks, ...more },
});

describe('an outcome in words', () => {
  it.each([
    ['wall_level_mm', true, 'difference between inside and outside, seen from the front'],
    ['heel_level_mm', true, 'difference between inside and outside, seen from behind'],
    ['wall_level_mm', false, 'level from the front'],
    ['my_wall_level', true, 'distance from zero of my_wall_level'],
    ['my_heel_level', true, 'distance from zero of my_heel_level'],
    ['toe_angle_deg', true, 'distance from zero of toe angle'],
    ['my_own', false, 'my_own'],
  ])('%s, as a size: %s', (outcome, size, words) => {
    expect(outcomeWords({ outcome, unit: '1', size })).toBe(words);
  });
});

describe('a number in words', () => {
  it('has as many decimals as its error deserves in the unit of the reader', () => {
    expect(quantity(1.2345, 0.02, 'mm', units)).toBe('1.23 mm');
    expect(quantity(25.4, 0.5, 'mm', { ...units, length: 'in' })).toBe('1.00 in');
    expect(quantity(1.2345, -0.02, 'mm', units, true)).toBe('+1.23 mm');
  });

  it('has its 95% interval with both signs', () => {
    expect(limitsInWords({ ...handFit.within, lower: -0.1 }, 'mm', units)).toBe('−0.1 mm to +0.9 mm');
  });

  it('writes a p with three decimals down to 0.001', () => {
    expect([0.001, 0.00099, 0.5].map(pWords)).toEqual(['0.001', 'below 0.001', '0.500']);
  });
});

describe('the effect', () => {
  it('is told from none where its interval leaves zero out', () => {
    const untold = /these intervals can’t tell that from none at all$/;
    for (const [lower, upper, told] of [
      [0.1, 0.9, true],
      [0, 0.9, false],
      [-0.1, 0.9, false],
      [-0.9, 0, false],
      [-0.9, -0.1, true],
    ] as const)
      expect(untold.test(effectSentence(within(0.5, lower, upper), handData, units)), `${lower} to ${upper}`).toBe(
        !told,
      );
  });

  it('goes with more or less of a size, and takes a value up or down', () => {
    const went = (estimate: number, asked = handData as Parameters<typeof effectSentence>[1]) =>
      effectSentence(within(estimate, 0.1, 0.9), asked, units).replace(
        /^A week longer went with (.*), within .*$/,
        '$1',
      );
    expect(went(0.5)).toBe('0.5 mm more difference between inside and outside, seen from the front');
    expect(went(-0.5)).toBe('0.5 mm less difference between inside and outside, seen from the front');
    expect(went(0)).toMatch(/more/);
    expect(went(0.5, angle)).toBe('toe angle going 0.5° further up');
    expect(went(-0.5, angle)).toBe('toe angle going 0.5° further down');
    expect(went(0, angle)).toMatch(/up$/);
  });

  it('between horses isn’t known where all have the same usual interval, nor the error where nobody repeated', () => {
    expect(betweenSentence({ ...handFit, between: undefined }, handData, units)).toMatch(/^All horses have the same/);
    expect(errorSentence({ ...handFit, smallestChange: Number.NaN }, handData, units)).toMatch(/isn’t known here/);
  });

  it('between horses is another question', () => {
    expect(betweenSentence(handFit, handData, units)).toBe(
      'Between horses, a usual interval a week longer went with 0.3 mm less difference between inside and outside, seen from the front (95% interval −0.7 mm to +0.1 mm). That compares horses and not intervals: who is seen how often is nobody’s chance.',
    );
  });

  it.each([
    [2.4, 'a week longer goes with more than that.'],
    [2.39, 'longer by 2 weeks to pass that,'],
    [-0.5, 'longer by 5 weeks to pass that,'],
    [2.4 / 52, 'longer by 52 weeks to pass that,'],
    [2.4 / 53, 'longer by more than a year to pass that,'],
  ])('of %d mm against an error of 2.4 mm', (estimate, words) => {
    expect(errorSentence(within(estimate, 0.1, 0.9), handData, units)).toContain(words);
  });
});

describe('the model in words', () => {
  it('names every term', () => {
    expect(
      [
        '(Intercept)',
        'interval_within',
        'interval_mean',
        'limbLH',
        'limbXX',
        'LF',
        'seasonApr–Jun',
        'shodshod',
        'off season',
        'not shod',
      ].map(termWords),
    ).toEqual([
      'where all below is at its base',
      'a week longer, within the same horse',
      'a usual interval a week longer, between horses',
      'the left hind',
      'limbXX',
      'LF',
      'in Apr–Jun',
      'shod',
      'off season',
      'not shod',
    ]);
  });

  it('names every group, and others as they are', () => {
    expect(['horse:interval', 'horse:limb', 'horse', 'farrier', 'constructor'].map((by) => groupName(by))).toEqual([
      ...['intervals of a horse', 'feet of a horse', 'horses', 'farriers', 'constructor'],
    ]);
    expect(groupName('horse', 'interval_within')).toBe('slopes of horses');
  });

  it('can be repeated elsewhere', () => {
    const beginning =
      'Change of the size (the value without its sign) of wall_level_mm from the start to the end of an interval (after to before), one row an interval of one foot, 4 rows. Fixed effects: the length of the interval in weeks beyond the mean of its horse, that mean, limb, quarter of the year, shod or bare and farrier; categories against their first level. Random intercepts';
    const ending =
      'Restricted maximum likelihood; degrees of freedom by Satterthwaite; 95% intervals from Student’s t.';
    expect(modelSentence(handFit, handData)).toBe(
      `${beginning} and uncorrelated slopes: feet of a horse and slopes of horses. ${ending}`,
    );
    const simple = { ...handFit, random: handFit.random.slice(0, 1), missing: 1 };
    expect(modelSentence(simple, handData)).toBe(
      `${beginning}: feet of a horse. ${ending} 1 row left out because a circumstance in the model is not known for it.`,
    );
    expect(modelSentence(handFit, { ...handData, size: false })).toMatch(/^Change of wall_level_mm/);
  });

  it('counts the rows left out', () => {
    expect(modelSentence({ ...handFit, missing: 2 }, handData)).toMatch(/ 2 rows left out/);
  });

  it('says which groups don’t vary', () => {
    expect(singularSentence(handFit)).toBe('');
    const flat = {
      ...handFit,
      singular: true,
      random: [{ by: 'horse', term: '(Intercept)', sd: 1e-6 }, ...handFit.random],
    };
    expect(singularSentence(flat)).toMatch(/^The fit finds no variation of its own between horses once/);
  });
});

describe('the checks', () => {
  it('say what shuffling, a robust slope and each horse’s leaving give', () => {
    expect(checkSentences(handFit, handData, units).slice(0, 3)).toEqual([
      '**Shuffling**: were the lengths of a horse’s intervals handed out by chance, an effect as far from zero would come up with p 0.012 (9,999 drawn by lot); the model says p 0.020.',
      '**A slope that wild values can’t bend** (the weighted median of the slopes between any two intervals of one foot): +0.4 mm a week, 95% interval +0.1 mm to +0.7 mm.',
      '**Without any one horse** the effect lies between +0.3 mm (without Kit) and +0.6 mm (without Moss).',
    ]);
  });

  it('say whether all arrangements were counted', () => {
    const exact = checked({ permutation: { p: 0.5, arrangements: 36, exact: true } });
    expect(checkSentences(exact, handData, units)[0]).toContain('with p 0.500 (36 arrangements, all there are);');
  });

  it('leave a single horse out of the words', () => {
    const one = checked({ without: handFit.checks.without.slice(0, 1) });
    expect(checkSentences(one, handData, units)).toHaveLength(4);
    expect(checkSentences(one, handData, units)[2]).toMatch(/^\*\*What is left over/);
  });

  it('take residuals for normal above a straightness of 0.99, and slopes for different below a p of 0.05', () => {
    const said = (straightness: number, ownSlopesP: number) =>
      checkSentences(
        checked({ ownSlopesP, residuals: { ...handFit.checks.residuals, straightness } }),
        handData,
        units,
      ).slice(-2);
    expect(said(0.991, 0.05)).toEqual([
      '**What is left over** is spread much like a normal distribution, as the model takes it to be.',
      '**Do horses differ in their slopes?** Not so that these intervals would show it (p 0.050).',
    ]);
    expect(said(0.99, 0.049)).toEqual([
      '**What is left over** is not spread like a normal distribution: trust the shuffling more than the model’s p.',
      '**Horses differ in their slopes** (p 0.049): let every horse have its own, above; the interval then allows for it.',
    ]);
  });
});

describe('what else could explain it', () => {
  const said = (fit: IntervalFit, asked: Parameters<typeof explanationSentences>[1] = handData) =>
    explanationSentences(fit, asked, units);

  it('is what changes along with the interval', () => {
    expect(said(handFit)[0]).toBe(
      '**Season, shoeing and farrier** change along with the interval. With all that is known of them the effect is +0.5 mm; without the season +0.3 mm and without shoeing and the farrier +0.7 mm.',
    );
    expect(said(checked({ other: [] }))[0]).toBe(
      '**Season, shoeing and farrier** change along with the interval. They are the same for all these intervals, or not known.',
    );
  });

  it('is the farrier, in the model or not', () => {
    expect(said(handFit)[1]).toMatch(/^\*\*The farrier\*\* is in the model because/);
    const without = { ...handFit, design: { ...handFit.design, farrierAs: 'not in the model' } } as const;
    expect(said(without)[1]).toMatch(/^\*\*The farrier\*\* is not in the model: one alone/);
  });

  it('is what too few intervals know of', () => {
    const unknown = { ...handFit, design: { ...handFit.design, notKnown: ['shod', 'season'] } };
    expect(said(unknown)[2]).toBe('Known for too few intervals to be in the model: shoeing and the season.');
    expect(said(handFit)).toHaveLength(4);
  });

  it('is that feet were seen sooner because they were bad', () => {
    expect(said(handFit)[2]).toBe(
      '**Were feet seen sooner because they were bad?** An interval that started 1.0 mm further from zero was 1.3 days shorter within the same horse (p 0.040). So how a foot stood had to do with when it was seen again, and the effect of the interval can’t be told apart from that.',
    );
    const later = checked({ soonerWhenBad: { days: 2, p: 0.05 } });
    expect(said(later)[2]).toMatch(/was 2\.0 days longer .* \(p 0\.050\)\. That is within what chance gives\.$/);
    expect(said(checked({ soonerWhenBad: { days: 0, p: 1 } }))[2]).toMatch(/0\.0 days longer/);
    expect(said(checked({ soonerWhenBad: { days: Number.NaN, p: 1 } }))).toHaveLength(3);
  });

  it('speaks of what started higher where zero is not the middle, and of tenths of a ratio', () => {
    expect(said(handFit, angle)[2]).toMatch(/An interval that started 1\.0° higher was 1\.3 days/);
    expect(said(handFit, { ...angle, outcome: 'wall_level_mm' })[2]).toMatch(/further from zero/);
    expect(said(handFit, { ...angle, size: true })[2]).toMatch(/further from zero/);
    const ratio = { outcome: 'frog_ratio', unit: '1', size: false };
    expect(said(checked({ soonerWhenBad: { days: -20, p: 0.04 } }), ratio)[2]).toMatch(
      /started 0\.10 higher was 2\.0 days/,
    );
  });

  it('is who is seen how often, where horses differ in it', () => {
    expect(said(handFit)[3]).toMatch(/^\*\*Which horses are seen how often\*\*/);
    expect(said({ ...handFit, between: undefined })).toHaveLength(3);
  });
});

import { describe, expect, it } from 'vitest';
import type { Finding } from '../../lib/hoof/finding.ts';
import type { FootFacts } from '../../lib/hoof/footFacts.ts';
import type { Measure, Range } from '../../lib/hoof/measure.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { findingWords } from '../../lib/hoof/sentences.ts';
import { verdict } from '../../lib/hoof/verdict.ts';
import { daysFromIso } from '../../lib/sheet/days.ts';

const mm = { length: 'mm', mass: 'kg' } as const;
const measure = (name: string): Measure => measures.find((row) => row.name === name)!;
const range: Range = { atMost: 5, above: 'inside high', source: 'my vet', firmness: 'common practice, no source' };

const foot: FootFacts = {
  ...{ horse: 'Kit', limb: 'LF', date: daysFromIso('2026-06-22'), moment: 'after', readings: 1 },
  ...{ therapeutic: false, poorlySeen: false },
};
const own: NonNullable<Finding['own']> = {
  ...{ median: 1, earlier: 4, change: 8, changeError: 3, distance: 2.7 },
  last: { value: 2, date: daysFromIso('2026-05-11') },
};
/** An inside wall 9 ± 1 mm higher than the outside where it used to be 1 mm higher. */
const finding: Finding = {
  ...{ state: 'raise', foot, row: 0, measure: measure('wall_level_mm'), value: 9, error: 1, score: 4, own },
  herd: { median: 0.5, feet: 24, distance: -3.14, any: false },
  verdict: verdict(9, 1, range),
  also: [],
};
const wordsOf = (more: Partial<Finding> = {}) => findingWords({ ...finding, ...more }, mm);
const sentence = (more: Partial<Finding> = {}) => wordsOf(more).sentence;
const start = 'Seen from the front the inside is 9.0 mm higher than the outside';

describe('the sentence of a finding', () => {
  it('says what was found with the trade’s word for it, and how much it changed', () => {
    expect(sentence()).toBe(`${start} (inside high), a change of 8 ± 3 mm from what is usual for this foot.`);
    expect(sentence({ own: { ...own, change: -8 } })).toBe(sentence());
  });

  it('has no word where the range has none, or where it isn’t sure that the value is beyond', () => {
    const told = `${start}, a change of 8 ± 3 mm from what is usual for this foot.`;
    expect(sentence({ verdict: verdict(9, 1, { ...range, above: undefined }) })).toBe(told);
    expect(sentence({ verdict: verdict(9, 3, range) })).toBe(told);
    expect(sentence({ verdict: verdict(9, 1, undefined) })).toBe(told);
  });

  it('says that a change can’t be told yet, and how many readings would tell where any number would', () => {
    const told = `${start} (inside high), a change of 8 ± 3 mm from what is usual for this foot, and whether that is more than the error of measuring can’t be told`;
    expect(sentence({ state: 'unsure' })).toBe(`${told}.`);
    expect(sentence({ state: 'unsure', repeats: 3 })).toBe(`${told}; 3 readings in all would tell.`);
    expect(sentence({ state: 'unsure', repeats: 30 })).toBe(`${told}; 30 readings in all would tell.`);
    expect(sentence({ state: 'unsure', repeats: 31 })).toBe(
      `${told}; more readings than anyone would take would tell.`,
    );
  });

  it('says of a foot measured once that it can’t be told', () => {
    expect(sentence({ state: 'unsure', own: undefined })).toBe(
      `${start} (inside high), measured once at this moment, so whether it changed can’t be told yet.`,
    );
  });

  it('speaks of crookedness for horses of five years or more, and of measures that show it', () => {
    const grown =
      / In a horse of 5 years or more crookedness will not be trimmed straight \(common practice, no source\)\.$/;
    expect(sentence({ foot: { ...foot, age: 5 } })).toMatch(grown);
    expect(sentence({ foot: { ...foot, age: 4 } })).not.toMatch(grown);
    expect(sentence({ foot })).not.toMatch(grown);
    expect(sentence({ foot: { ...foot, age: 9 }, measure: measure('frog_ratio') })).not.toMatch(grown);
  });
});

describe('the subject and the number of a finding', () => {
  it('are the foot, or its pair', () => {
    const pair = measure('toe_angle_left_minus_right_deg');
    expect(wordsOf().subject).toBe('Kit, left fore');
    expect(wordsOf({ measure: pair }).subject).toBe('Kit, front pair');
    expect(wordsOf({ measure: pair, foot: { ...foot, limb: 'LH' } }).subject).toBe('Kit, hind pair');
  });

  it('have a plus only where the sign says which way', () => {
    expect(wordsOf().value).toBe('+9.0 ± 1.0 mm');
    expect(wordsOf({ measure: measure('frog_ratio'), value: 0.5, error: 0.1 }).value).toBe('0.50 ± 0.10');
  });
});

describe('what a finding is held against', () => {
  it('is the range with its source, the other foot, its own past and the herd', () => {
    expect(wordsOf({ other: 1.25 }).against).toEqual([
      'Range: at most 5.0 mm — beyond the range by 4.0 mm (inside high), more than the error of measuring. Source: my vet (common practice, no source).',
      'The other foot at the same time: 1.3 mm.',
      'This foot on 2026-05-11: 2.0 mm; the middle of its 4 earlier measurements: 1.0 mm.',
      'The herd’s 24 front feet after the farrier’s work: middle 0.5 mm; this one lies 3.1 times the usual spread away.',
    ]);
  });

  it('is only what there is', () => {
    const { against } = wordsOf({ own: undefined, herd: undefined, verdict: verdict(9, 1, undefined) });
    expect(against).toEqual(['No range holds for this foot.']);
  });

  it('may be one earlier measurement', () => {
    expect(wordsOf({ own: { ...own, earlier: 1 } }).against[1]).toBe(
      'This foot on 2026-05-11: 2.0 mm; its one earlier measurement: 1.0 mm.',
    );
  });

  it.each([
    ['before', 'before the farrier’s work'],
    ['after', 'after the farrier’s work'],
    ['between', 'between visits'],
    ['constructor', 'constructor'],
  ])('is the herd at the moment %s: %s', (moment, words) => {
    expect(wordsOf({ foot: { ...foot, moment } }).against[2]).toContain(`24 front feet ${words}: middle`);
  });

  it('is the herd at any moment where it had to be, and of the same end', () => {
    const herd = { ...finding.herd!, any: true };
    expect(wordsOf({ herd, foot: { ...foot, limb: 'RH' } }).against[2]).toContain('24 hind feet at any moment: middle');
  });
});

describe('the notes of a finding', () => {
  it('are none for a foot seen well', () => {
    expect(wordsOf().notes).toEqual([]);
    expect(wordsOf({ foot: { ...foot, build: 'gaited' } }).notes).toEqual([]);
  });

  it('say what was done on purpose and what was seen poorly', () => {
    expect(wordsOf({ state: 'on purpose', foot: { ...foot, poorlySeen: true } }).notes).toEqual([
      'Vet and farrier have set this foot so on purpose: it is not ranked.',
      'Measured with a poor view or with hair over the hairline: its error is taken as twice as large.',
    ]);
  });

  it('say of long feet that gaited builds carry them on purpose', () => {
    const long = measures.find(({ context }) => context === 'long')!;
    expect(wordsOf({ measure: long, foot: { ...foot, build: 'gaited' } }).notes).toEqual([
      'Gaited builds carry longer feet on purpose.',
    ]);
    expect(wordsOf({ measure: long, foot: { ...foot, build: 'riding' } }).notes).toEqual([]);
  });

  it('say what else of this foot is unusual', () => {
    const other = { ...finding, measure: measure('frog_ratio'), value: 0.5, error: 0.1 };
    expect(wordsOf({ also: [other] }).notes).toEqual([
      'Also, less unusual: the frog is 0.50 ± 0.10 times as wide as it is long.',
    ]);
  });
});

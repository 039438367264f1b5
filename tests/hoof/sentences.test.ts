import { describe, expect, it } from 'vitest';
import { bibliography, citation } from '../../lib/hoof/bibliography.ts';
import type { Measure, Range } from '../../lib/hoof/measure.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { footName, measureSentence, rangeSentence, rangeSource, verdictSentence } from '../../lib/hoof/sentences.ts';
import { verdict } from '../../lib/hoof/verdict.ts';

const mm = { length: 'mm', mass: 'kg' } as const;
const inches = { length: 'in', mass: 'lb' } as const;
const measure = (name: string): Measure => measures.find((row) => row.name === name)!;
const published = { source: 'turner-balance', firmness: 'published' } as const;

describe('a measure in a sentence', () => {
  it('turns its words round below zero and leaves the sign out', () => {
    const level = measure('wall_level_mm');
    expect(measureSentence(level, 4.25, mm)).toBe('seen from the front the inside is 4.3 mm higher than the outside');
    expect(measureSentence(level, -4.25, mm, 0.8)).toBe(
      'seen from the front the outside is 4.3 ± 0.8 mm higher than the inside',
    );
    expect(measureSentence(level, -25.4, inches)).toBe(
      'seen from the front the outside is 1.00 in higher than the inside',
    );
  });

  it('has no side at zero', () => {
    expect(measureSentence(measure('wall_level_mm'), 0, mm)).toBe(
      'seen from the front the inside is 0.0 mm higher than the outside',
    );
  });

  it('says that nothing was measured', () => {
    expect(measureSentence(measure('frog_ratio'), Number.NaN, mm)).toMatch(/not measured/);
  });
});

describe('a range in words', () => {
  it.each<[Partial<Range>, string, string]>([
    [{ atMost: 5 }, 'deg', 'at most 5.0°'],
    [{ atLeast: 0.67 }, '1', 'at least 0.67'],
    [{ atLeast: -5, atMost: 5 }, 'mm', '−5.0 mm to 5.0 mm'],
    [{ atLeast: -5, atMost: 5, limitsOutside: true }, 'mm', 'between −5.0 mm and 5.0 mm'],
    [{ atMost: 5, limitsOutside: true }, 'mm', 'less than 5.0 mm'],
    [{ atLeast: 5, limitsOutside: true }, 'mm', 'more than 5.0 mm'],
    [{ atLeast: 0, atMost: 0 }, 'deg', 'parallel, a difference of 0.0°'],
    [{ atLeast: 0, atMost: 0 }, 'mm', '0.0 mm'],
    [{ atLeast: 3, atMost: 3 }, 'deg', '3.0°'],
    [{}, 'mm', 'any'],
  ])('%o', (limits, unit, words) => {
    expect(rangeSentence({ ...limits, ...published }, unit, mm)).toBe(words);
  });

  it('follows the units of the reader', () => {
    expect(rangeSentence({ atMost: 25.4, ...published }, 'mm', inches)).toBe('at most 1.00 in');
  });

  it('names its source and how firm it is', () => {
    expect(rangeSource({ ...published })).toBe(bibliography['turner-balance'].text);
    expect(rangeSource({ source: 'turner-1992', firmness: 'from memory' })).toMatch(/Turner 1992.*\(from memory\)$/);
    const practice = 'common practice, no source';
    expect(rangeSource({ source: practice, firmness: practice })).toBe(practice);
    expect(rangeSource({ source: 'my vet', firmness: practice })).toBe('my vet (common practice, no source)');
  });
});

describe('a verdict in words', () => {
  const underrun: Range = { atMost: 5, above: 'underrun', ...published };
  it.each<[number, number, string]>([
    [4, 1, 'within the range'],
    [9, 1, 'beyond the range by 4.0° (underrun), more than the error of measuring'],
    [6, 1, '1.0° outside the range (underrun), but can’t tell from these measurements; 4 readings in all would tell'],
    [
      5.1,
      1,
      '0.1° outside the range (underrun), but can’t tell from these measurements; more readings than anyone would take would tell',
    ],
    [9, Number.NaN, '4.0° outside the range (underrun), but can’t tell from these measurements'],
    [Number.NaN, 1, 'not measured'],
  ])('of %d ± %d', (value, error, words) => {
    expect(verdictSentence(verdict(value, error, underrun), 'deg', mm)).toBe(words);
  });

  it('has no word for a side that has none', () => {
    const { above, ...nameless } = underrun;
    expect(verdictSentence(verdict(9, 1, nameless), 'deg', mm)).toBe(
      'beyond the range by 4.0°, more than the error of measuring',
    );
  });

  it('without a range', () => {
    expect(verdictSentence(verdict(9, 1, undefined), 'deg', mm)).toBe('no range holds for this foot');
  });
});

it('a foot has a name', () => {
  expect(footName({ horse: 'Bella', limb: 'RH' })).toBe('Bella, right hind');
});

describe('a source', () => {
  it('is its reference, marked where it was not read itself', () => {
    expect(citation('carroll-1988')).toMatch(/^Carroll & Huntington 1988/);
    expect(citation('hobbs-2018')).toMatch(/\(read second-hand\)$/);
  });

  it('that nobody knows stays as it was written', () => {
    expect(citation('my own yard')).toBe('my own yard');
    expect(citation('constructor')).toBe('constructor');
  });

  it.each(Object.entries(bibliography))('%s says who and what, and where it was read', (_, reference) => {
    expect(reference.text.length).toBeGreaterThan(15);
    expect(reference.says).toMatch(/\.$/);
    if (reference.provenance !== 'from memory') expect(reference.address).toMatch(/^https?:\/\//);
  });
});

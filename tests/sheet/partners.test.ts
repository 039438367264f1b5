import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findPartners } from '../../lib/sheet/partners.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import type { Relation } from '../../lib/sheet/relation.ts';

const none = Number.NaN;
const sides = { LF: 'RF', RF: 'LF', LH: 'RH', RH: 'LH' };
const opposite: Relation = {
  name: 'opposite',
  words: "the other side's",
  match: ['horse_id', 'date'],
  optional: ['moment'],
  swap: { limb: sides },
};
const frontOf: Relation = { ...opposite, name: 'front_of', swap: { limb: { LH: 'LF', RH: 'RF' } } };
const previous: Relation = {
  name: 'previous',
  words: "the last visit's",
  match: ['horse_id', 'limb'],
  optional: ['moment'],
  before: 'date',
};

interface Foot {
  readonly horse?: string;
  readonly limb?: string;
  readonly date?: number;
  readonly moment?: string;
}

function feet(rows: readonly Foot[], withMoment = true) {
  return plainTable({
    horse_id: { values: rows.map(({ horse }) => horse ?? 'ash') },
    limb: { values: rows.map(({ limb }) => limb ?? 'LF') },
    date: { kind: 'date', values: Float64Array.from(rows, ({ date }) => date ?? 0) },
    ...(withMoment ? { moment: { values: rows.map(({ moment }) => moment ?? 'after') } } : {}),
  });
}

function partners(relation: Relation, rows: readonly Foot[], withMoment = true): number[] {
  return [...findPartners(relation, feet(rows, withMoment))];
}

describe('the partner on the other side', () => {
  test('is the same horse’s foot of the same day', () => {
    const rows = [{ limb: 'LF' }, { limb: 'RF' }, { limb: 'RF', date: 9 }, { limb: 'LF', horse: 'bay' }];
    expect(partners(opposite, rows)).toEqual([1, 0, -1, -1]);
  });

  test('was measured at the same moment, where moments are known', () => {
    const rows = [
      { limb: 'LF', moment: 'before' },
      { limb: 'RF', moment: 'after' },
      { limb: 'LF', moment: 'after' },
    ];
    expect(partners(opposite, rows)).toEqual([-1, 2, 1]);
    // Without the column both left feet could be the partner.
    expect(partners(opposite, rows, false)).toEqual([1, -1, 1]);
  });

  test('is nobody where there are two to choose from', () => {
    expect(partners(opposite, [{ limb: 'LF' }, { limb: 'RF' }, { limb: 'RF' }])).toEqual([-1, 0, 0]);
  });

  test('is nobody where horse, day or limb is missing', () => {
    expect(partners(opposite, [{ horse: '' }, { limb: 'RF', horse: '' }])).toEqual([-1, -1]);
    expect(partners(opposite, [{ date: none }, { limb: 'RF', date: none }])).toEqual([-1, -1]);
    expect(partners(opposite, [{ limb: '' }, { limb: 'RF' }])).toEqual([-1, -1]);
  });

  test('has no moment either where this one has none', () => {
    expect(partners(opposite, [{ moment: '' }, { limb: 'RF', moment: '' }, { limb: 'RF' }])).toEqual([1, 0, -1]);
  });

  test('goes one way where the words say so', () => {
    expect(partners(frontOf, [{ limb: 'LF' }, { limb: 'LH' }, { limb: 'RH' }])).toEqual([-1, 0, -1]);
  });

  test('of the partner is oneself', () => {
    fc.assert(
      fc.property(fc.array(foot, { maxLength: 30 }), (rows) => {
        const found = partners(opposite, rows);
        found.forEach((partner, row) => {
          if (partner >= 0 && found[partner] >= 0) expect(found[partner]).toBe(row);
        });
      }),
    );
  });
});

describe('the row before', () => {
  test('is the nearest earlier one of the same foot, wherever it stands', () => {
    const rows = [{ date: 90 }, { date: 10 }, { date: 50 }, { date: 20, limb: 'RF' }, { date: 60, horse: 'bay' }];
    expect(partners(previous, rows)).toEqual([2, -1, 1, -1, -1]);
  });

  test('is looked for at the nearest earlier date only, at the same moment', () => {
    const rows = [
      { date: 10, moment: 'before' },
      { date: 10, moment: 'after' },
      { date: 50, moment: 'before' },
      { date: 90, moment: 'after' },
    ];
    expect(partners(previous, rows)).toEqual([-1, -1, 0, -1]);
    expect(partners(previous, rows, false)).toEqual([-1, -1, -1, 2]);
  });

  test('is nobody without a date', () => {
    expect(partners(previous, [{ date: 10 }, { date: none }])).toEqual([-1, -1]);
  });
});

describe('any relation', () => {
  test('finds what comparing every row with every other finds', () => {
    const relations = [opposite, frontOf, previous, { ...previous, swap: { limb: sides }, match: ['horse_id'] }];
    fc.assert(
      fc.property(fc.array(foot, { maxLength: 25 }), fc.constantFrom(...relations), (rows, relation) => {
        expect(partners(relation, rows)).toEqual(rows.map((_, row) => byComparing(relation, rows, row)));
      }),
      { numRuns: 400 },
    );
  });

  test('names the column that a text can’t be', () => {
    const table = plainTable({ horse_id: { values: ['ash'] }, limb: { values: ['LF'] }, date: { values: ['soon'] } });
    expect(() => findPartners(previous, table)).toThrow(/column date holds text/);
    const numbered = plainTable({
      horse_id: { values: ['a'] },
      limb: { values: Float64Array.of(1) },
      date: { values: Float64Array.of(1) },
    });
    expect(() => findPartners(opposite, numbered)).toThrow(/column limb holds numbers/);
  });

  test('takes words such as __proto__ for words', () => {
    const rows = [{ limb: '__proto__' }, { limb: 'constructor' }];
    expect(partners(opposite, rows)).toEqual([-1, -1]);
  });
});

const foot: fc.Arbitrary<Foot> = fc.record({
  horse: fc.constantFrom('ash', 'bay', ''),
  limb: fc.constantFrom('LF', 'RF', 'LH', 'RH', ''),
  date: fc.constantFrom(10, 20, 30, none),
  moment: fc.constantFrom('before', 'after', ''),
});

/** The relation's own words, read literally. */
function byComparing(relation: Relation, rows: readonly Foot[], row: number): number {
  const cell = (at: number, name: string) => {
    const { horse, limb, date, moment } = rows[at];
    return { horse_id: horse, limb, date, moment }[name] as string | number;
  };
  const missing = (value: string | number) => value === '' || Number.isNaN(value);
  const matches = (at: number) =>
    relation.match.every((name) => !missing(cell(row, name)) && cell(at, name) === cell(row, name)) &&
    Object.entries(relation.swap ?? {}).every(([name, words]) => {
      const wanted = (words as Record<string, string>)[cell(row, name) as string];
      return wanted !== undefined && cell(at, name) === wanted;
    });
  let candidates = rows.map((_, at) => at).filter(matches);
  if (relation.before !== undefined) {
    const own = cell(row, relation.before) as number;
    const earlier = candidates.filter((at) => (cell(at, relation.before!) as number) < own);
    const nearest = Math.max(...earlier.map((at) => cell(at, relation.before!) as number));
    candidates = earlier.filter((at) => cell(at, relation.before!) === nearest);
  }
  const same = candidates.filter((at) => (relation.optional ?? []).every((name) => cell(at, name) === cell(row, name)));
  return same.length === 1 ? same[0] : -1;
}

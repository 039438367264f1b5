import { describe, expect, it } from 'vitest';
import { endOf, type Limb } from '../../lib/hoof/limbs.ts';
import type { Measure, Range } from '../../lib/hoof/measure.ts';
import { measures } from '../../lib/hoof/measures/index.ts';
import { ranking } from '../../lib/hoof/ranking.ts';
import { footRelations } from '../../lib/hoof/relations.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import type { Table } from '../../lib/sheet/table.ts';

interface Row {
  readonly horse: string;
  readonly day: number;
  readonly value?: number;
  readonly error?: number;
  readonly limb?: Limb;
  readonly moment?: string;
  readonly therapeutic?: number;
  readonly readings?: number;
  /** A second and a third column. */
  readonly second?: number;
  readonly third?: number;
}

const level: Measure = { ...measures.find(({ name }) => name === 'wall_level_mm')!, name: 'first' };
const trio: readonly Measure[] = ['first', 'second', 'third'].map((name) => ({ ...level, name }));

function occasions(rows: readonly Row[], errors = true): Table {
  const number = (of: (row: Row) => number | undefined, missing = Number.NaN) =>
    Float64Array.from(rows, (row) => of(row) ?? missing);
  const limbOf = ({ limb = 'LF' }: Row): Limb => limb;
  return plainTable(
    {
      horse_id: { values: rows.map(({ horse }) => horse) },
      date: { kind: 'date', unit: 'd', values: number(({ day }) => day) },
      limb: { values: rows.map(limbOf) },
      end: { values: rows.map((row) => endOf(limbOf(row))) },
      moment: { values: rows.map(({ moment = 'after' }) => moment) },
      therapeutic: { kind: 'boolean', values: number(({ therapeutic }) => therapeutic) },
      readings: { values: number(({ readings }) => readings, 1) },
      first: {
        unit: 'mm',
        values: number(({ value }) => value),
        ...(errors && { error: number(({ error }) => error) }),
      },
      second: { unit: 'mm', values: number(({ second }) => second) },
      third: { unit: 'mm', values: number(({ third }) => third) },
    },
    footRelations.toReversed(),
  );
}

/**
 * Left fores measured −1, 0 and 1 on three days. The middle of all is 0, the middle distance from it 1: a spread of
 * 1.4826, and the same of each foot about its own middle. A few more values beside them move neither.
 */
const spread = 1.4826;
const calm = (horses: number, more: Partial<Row> = {}): Row[] =>
  Array.from({ length: horses }, (_, horse) =>
    [-1, 0, 1].map((value, i) => ({
      ...{ horse: `calm ${horse}`, day: i + 1, value, second: value, third: value },
      ...more,
    })),
  ).flat();

/** What is found of a foot that was measured once before and now, among nine calm ones. */
const found = (before: Partial<Row>, now: Partial<Row>, ranges: readonly Range[] = [], horses = 9) => {
  const rows = [
    { horse: 'Kit', day: 5, ...before },
    { horse: 'Kit', day: 9, ...now },
  ];
  const { raise, unsure } = ranking(occasions([...rows, ...calm(horses)]), new Map([['first', ranges]]), [level]);
  return [...raise, ...unsure];
};
/** The errors of 3 now and 4 before make one of 5 for the change. */
const was = { value: 0, error: 4 };

describe('a finding', () => {
  it('holds the value against the herd and against the foot’s own past', () => {
    expect(found(was, { value: 12.5, error: 3 })).toMatchObject([
      {
        ...{ state: 'raise', value: 12.5, error: 3, row: 1, foot: { horse: 'Kit', limb: 'LF', date: 9 }, also: [] },
        herd: { median: 0, feet: 10, distance: 12.5 / spread, any: false },
        own: { median: 0, earlier: 1, change: 12.5, changeError: 5, distance: 2.5, last: { value: 0, date: 5 } },
        score: Math.sqrt((12.5 / spread) * 2.5),
        verdict: { state: 'no range' },
      },
    ]);
  });

  it('is raised from 2.5 errors of the change on', () => {
    expect(found(was, { value: 12.4, error: 3 })).toEqual([]);
  });

  it('is not raised for a change beyond its error that feet usually make', () => {
    expect(found({ value: 0, error: 0 }, { value: 3, error: 1 })).toEqual([]);
    expect(found({ value: 0, error: 0 }, { value: 2.5 * spread, error: 1 })).toMatchObject([{ state: 'raise' }]);
  });

  it('is from two spreads of the herd on', () => {
    expect(found({ value: -20, error: 0 }, { value: 1.99 * spread, error: 0 })).toEqual([]);
    expect(found({ value: -20, error: 0 }, { value: 2 * spread, error: 0 })).toHaveLength(1);
  });

  it('is not a value far from the herd that has come nearer', () => {
    expect(found({ value: 40, error: 0 }, { value: 20, error: 0 })).toEqual([]);
    expect(found({ value: -40, error: 0 }, { value: -20, error: 0 })).toEqual([]);
    expect(found({ value: 20, error: 0 }, { value: 40, error: 0 })).toHaveLength(1);
  });

  it('is unsure between one error of the change and 1.96 of them', () => {
    const states = [5, 5.1, 9.8, 9.81].map((value) => found(was, { value, error: 3 }).map(({ state }) => state));
    expect(states).toEqual([[], ['unsure'], ['unsure'], []]);
    expect(found(was, { value: 9, error: 3 })[0].score).toBeCloseTo(Math.sqrt((9 / spread) * (9 / 5)), 12);
  });

  it('says how many readings in all would tell, where any number would', () => {
    // 18 / 4 of squared error now and 16 before: 1.96 × √20.5 is 8.87, and with three readings 1.96 × √22 is 9.19.
    expect(found(was, { value: 9, error: 3, readings: 2 })[0].repeats).toBe(4);
    // The past alone has 1.96 × 4 = 7.84.
    expect(found(was, { value: 7.84, error: 3 })[0].repeats).toBeUndefined();
    expect(found(was, { value: 7, error: 3 })[0].repeats).toBeUndefined();
  });

  it('is unsure, whatever the number of readings, where the error is unknown', () => {
    expect(found({ value: 0 }, { value: 2.4 * spread })).toEqual([]);
    const [finding] = found({ value: 0 }, { value: 2.5 * spread });
    expect(finding).toMatchObject({ state: 'unsure', score: 2.5 });
    expect(finding.repeats).toBeUndefined();
  });

  it('of a column without errors has an unknown one', () => {
    const rows = [{ horse: 'Kit', day: 5, value: 0 }, { horse: 'Kit', day: 9, value: 10 }, ...calm(9)];
    const { unsure } = ranking(occasions(rows, false), new Map(), [level]);
    expect(unsure.map(({ error }) => error)).toEqual([Number.NaN]);
  });

  it('of a foot measured once is unsure from three spreads of the herd on', () => {
    const of = (value: number) => ranking(occasions([{ horse: 'Kit', day: 9, value }, ...calm(9)]), new Map(), [level]);
    expect(of(2.99 * spread).unsure).toEqual([]);
    const { unsure, feet, once } = of(3 * spread);
    expect(unsure).toMatchObject([{ state: 'unsure', score: 3 }]);
    expect([unsure[0].own, unsure[0].repeats, feet, once]).toEqual([undefined, undefined, 10, 1]);
  });
});

describe('among too few feet to say what is usual', () => {
  it('a foot is held against its own past alone', () => {
    const [finding] = found(was, { value: 12.5, error: 3 }, [], 6);
    expect(finding).toMatchObject({ state: 'raise', score: 2.5 });
    expect(finding.herd).toBeUndefined();
    expect(found(was, { value: 12.5, error: 3 }, [], 7)[0].herd).toMatchObject({ feet: 8 });
  });

  it('a change that can’t be told is no finding', () => {
    expect(found(was, { value: 9, error: 3 }, [], 6)).toEqual([]);
    expect(found(was, { value: 9, error: 3 }, [], 7)).toHaveLength(1);
  });

  it('at that moment, feet of the same end at any moment stand in', () => {
    const hinds = calm(9, { limb: 'LH' }).map((row) => ({ ...row, value: row.value! + 100 }));
    const rows = [
      { horse: 'Kit', day: 5, moment: 'before', value: 0, error: 4 },
      { horse: 'Kit', day: 9, moment: 'before', value: 12.5, error: 3 },
    ];
    const { raise } = ranking(occasions([...rows, ...hinds, ...calm(9)]), new Map(), [level]);
    expect(raise).toMatchObject([{ herd: { median: 0, feet: 10, any: true, distance: 12.5 / spread } }]);
  });
});

describe('what counts as the past and as the herd', () => {
  it('are this foot’s measurements at the same moment of earlier days', () => {
    const rows: Row[] = [
      { horse: 'Kit', day: 4, value: 0 },
      { horse: 'Kit', day: 5 },
      { horse: 'Kit', day: 5, moment: 'between', value: 50 },
      { horse: 'Kit', day: 9, moment: 'before', value: 50 },
      { horse: 'Kit', day: 9, value: 12.5 },
    ];
    const { unsure } = ranking(occasions([...rows, ...calm(9)]), new Map(), [level]);
    expect(unsure).toMatchObject([{ row: 4, own: { earlier: 1, change: 12.5, last: { value: 0, date: 4 } } }]);
  });

  it('are no feet that were set so on purpose', () => {
    const set = calm(9, { therapeutic: 1, value: 50 }).map((row) => ({ ...row, horse: `set ${row.horse}` }));
    const rows = [{ horse: 'Kit', day: 5, ...was }, { horse: 'Kit', day: 9, value: 12.5, error: 3 }, ...set];
    expect(ranking(occasions([...rows, ...calm(9)]), new Map(), [level]).raise).toMatchObject([
      { herd: { median: 0, feet: 10 } },
    ]);
  });
});

describe('the other foot', () => {
  const rows: Row[] = [
    { horse: 'Kit', day: 9, limb: 'RF', value: 1 },
    { horse: 'Kit', day: 5, ...was },
    { horse: 'Kit', day: 9, value: 12.5, error: 3 },
  ];
  const other = (changed: readonly Row[], measure: Measure = level) =>
    ranking(occasions([...changed, ...calm(9)]), new Map(), [measure]).raise.map(({ other }) => other);

  it('stands beside the foot where it was measured at the same time', () => {
    expect(other(rows)).toEqual([1]);
    expect(other(rows.slice(1))).toEqual([undefined]);
    expect(other([{ ...rows[0], value: Number.NaN }, ...rows.slice(1)])).toEqual([undefined]);
  });

  it('says nothing of a pair, which is told of its left foot only', () => {
    const swapped = rows.map((row) => ({ ...row, limb: row.limb === 'RF' ? 'LF' : 'RF' }) as const);
    const pair = { ...level, view: 'pair' } as const;
    expect(other(rows, pair)).toEqual([undefined]);
    expect(other(swapped)).toEqual([1]);
    expect(other(swapped, pair)).toEqual([]);
  });
});

describe('a range with one limit', () => {
  const from = { source: 'turner-balance', firmness: 'published' } as const;
  const up = [
    { value: 0, error: 0 },
    { value: 10, error: 1 },
  ] as const;
  const down = [
    { value: 0, error: 0 },
    { value: -10, error: 1 },
  ] as const;

  it('lets nothing be raised inside it that moved away from the limit', () => {
    expect(found(...down, [{ atMost: 20, ...from }])).toEqual([]);
    expect(found(...up, [{ atLeast: -20, ...from }])).toEqual([]);
  });

  it('lets everything be raised that moved towards the limit, or lies beyond it', () => {
    expect(found(...up, [{ atMost: 20, ...from }])).toHaveLength(1);
    expect(found(...down, [{ atLeast: -20, ...from }])).toHaveLength(1);
    expect(found(...down, [{ atMost: -15, ...from }])).toMatchObject([{ verdict: { state: 'beyond', by: 5 } }]);
  });

  it('lets nothing be raised inside it of a foot measured once', () => {
    const of = (range: Range) =>
      ranking(occasions([{ horse: 'Kit', day: 9, value: 10 }, ...calm(9)]), new Map([['first', [range]]]), [level]);
    expect(of({ atLeast: -20, ...from }).unsure).toEqual([]);
    expect(of({ atMost: 20, ...from }).unsure).toEqual([]);
    expect(of({ atLeast: -20, atMost: 20, ...from }).unsure).toHaveLength(1);
    expect(of({ atLeast: 15, ...from }).unsure).toHaveLength(1);
  });

  it('with two limits, or with none, both ways count', () => {
    for (const range of [{ atLeast: -20, atMost: 20, ...from }, from])
      for (const [before, now] of [up, down]) expect(found(before, now, [range])).toHaveLength(1);
  });
});

describe('the order', () => {
  it('of one foot’s findings is those to raise before unsure ones, and the more unusual first', () => {
    const rows: Row[] = [
      { horse: 'Kit', day: 5, value: 0, error: 0, second: Number.NaN },
      { horse: 'Kit', day: 9, value: 20, error: 1, second: 400, third: 300 },
    ];
    const { raise } = ranking(occasions([...rows, ...calm(9)]), new Map(), trio.toReversed());
    expect(raise.map(({ measure, also }) => [measure.name, ...also.map((one) => one.measure.name)])).toEqual([
      ['first', 'second', 'third'],
    ]);
    expect(raise[0].also.map(({ also }) => also)).toEqual([[], []]);
  });

  it('of feet is the more unusual first', () => {
    const rows: Row[] = [10, 30, 20].flatMap((value, i) => [
      { horse: `horse ${i}`, day: 5, value: 0, error: 0 },
      { horse: `horse ${i}`, day: 9, value, error: 1 },
    ]);
    const { raise } = ranking(occasions([...rows, ...calm(9)]), new Map(), [level]);
    expect(raise.map(({ value }) => value)).toEqual([30, 20, 10]);
  });
});

it('only ranked columns of the feet that the table has are looked at', () => {
  const rows = [{ horse: 'Kit', day: 9, value: 50 }, ...calm(9)];
  const of = (measure: Measure) => ranking(occasions(rows), new Map(), [measure]).unsure.length;
  expect(of(level)).toBe(1);
  expect(of({ ...level, ranked: false })).toBe(0);
  expect(of({ ...level, table: 'horses' })).toBe(0);
  expect(of({ ...level, name: 'absent' })).toBe(0);
});

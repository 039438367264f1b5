import { describe, expect, it } from 'vitest';
import type { IntervalData } from '../../lib/hoof/intervalData.ts';
import { horseTerm, type IntervalDesign, intervalDesign } from '../../lib/hoof/intervalDesign.ts';

interface Row {
  readonly horse: string;
  readonly weeks: number;
  readonly limb?: string;
  /** When it started, in tens of weeks. */
  readonly start?: number;
  readonly shod?: string;
  readonly season?: string;
  readonly farrier?: string;
}

/** Intervals of one foot a horse, one after another, unless a row says otherwise. */
function dataOf(rows: readonly Row[]): IntervalData {
  const start = Float64Array.from(rows, ({ start }, i) => 70 * (start ?? i));
  const blank = new Float64Array(rows.length);
  const words = (of: (row: Row) => string | undefined, otherwise = '') => rows.map((row) => of(row) ?? otherwise);
  return {
    ...{ outcome: 'wall_level_mm', unit: 'mm', size: true, compared: 'after to before' },
    horse: words(({ horse }) => horse),
    limb: words(({ limb }) => limb, 'LF'),
    ...{ start, end: start.map((day, i) => day + 7 * rows[i].weeks) },
    ...{ change: Float64Array.from(rows, (_, i) => i), changeError: blank, atStart: blank },
    shod: words(({ shod }) => shod),
    season: words(({ season }) => season),
    farrier: words(({ farrier }) => farrier),
    leftOut: { unmeasured: 0, therapeutic: 0, otherMoments: 0 },
  };
}
const designed = (rows: readonly Row[], ownSlopes = false) => intervalDesign(dataOf(rows), ownSlopes) as IntervalDesign;
const refused = (rows: readonly Row[]) => intervalDesign(dataOf(rows), false);

/** Intervals of horses a, b and c in turn, of 5 and 7, 6 and 8, 7 and 9 weeks; `more` says the rest of a row. */
const many = (count: number, more: (i: number) => Partial<Row> = () => ({})): Row[] =>
  Array.from({ length: count }, (_, i) => ({
    ...{ horse: 'abc'[i % 3], weeks: 5 + (i % 3) + 2 * (Math.floor(i / 3) % 2) },
    ...more(i),
  }));
const cycle = (words: string, i: number): string => words[i % words.length];

describe('a design of intervals', () => {
  it('parts weeks into the mean of their horse and what they are beyond it', () => {
    const rows = many(24);
    const { columns, rows: kept } = designed(rows);
    expect(columns.interval_mean).toEqual(Float64Array.from(rows, (_, i) => 6 + (i % 3)));
    expect(columns.interval_within).toEqual(Float64Array.from(rows, (_, i) => (i % 6 < 3 ? -1 : 1)));
    expect(kept).toEqual(Int32Array.from(rows, (_, i) => i));
  });

  it('is of the rows whose circumstances are known, with their own changes, feet and intervals', () => {
    const rows = many(26, (i) => ({ shod: i === 1 ? '' : cycle('xy', i), limb: cycle('LR', i) }));
    const { columns, rows: kept, missing, foot, interval } = designed(rows);
    expect([missing, kept[0], kept[1], kept.length]).toEqual([1, 0, 2, 25]);
    expect((columns.change as Float64Array).slice(0, 3)).toEqual(Float64Array.of(0, 2, 3));
    expect((columns.shod as string[]).slice(0, 3)).toEqual(['x', 'x', 'y']);
    expect(foot.slice(0, 3)).toEqual(['a L', 'c L', 'a R']);
    // Five weeks from day 0, seven weeks from day 140.
    expect(interval.slice(0, 2)).toEqual(['1970-01-01 to 1970-02-05', '1970-05-21 to 1970-07-09']);
    expect((columns.interval as string[])[1]).toBe(interval[1]);
  });

  it('needs 20 intervals of 3 horses', () => {
    expect(designed(many(20)).rows).toHaveLength(20);
    expect(refused(many(19))).toBe(
      'There are 19 intervals of 3 horses to go by; at least 20 intervals of 3 horses are needed',
    );
    const two = many(30).filter(({ horse }) => horse !== 'c');
    expect(refused(two)).toBe(
      'There are 20 intervals of 2 horses to go by; at least 20 intervals of 3 horses are needed',
    );
    expect(refused([])).toMatch(/^There are 0 intervals of 0 horses/);
    expect(refused(many(1))).toMatch(/^There are 1 interval of 1 horse to go by/);
  });

  it('needs intervals that differ within a horse', () => {
    expect(refused(many(24).map((row, i) => ({ ...row, weeks: 6 + (i % 3) })))).toMatch(/^Every horse was always seen/);
    expect(designed(many(24).map((row, i) => ({ ...row, weeks: i === 0 ? 5 : 6 }))).rows).toHaveLength(24);
  });

  it('needs ten rows more than numbers to find', () => {
    // A base, two lengths of an interval, three more limbs, seasons and farriers each, and one more shoeing: 13.
    const full = (i: number): Partial<Row> => ({
      limb: cycle('LRlr', i),
      season: cycle('1234', Math.floor(i / 2)),
      farrier: cycle('ABCD', Math.floor(i / 3)),
      shod: cycle('xy', Math.floor(i / 5)),
    });
    expect(designed(many(23, full)).fixed).toHaveLength(6);
    expect(refused(many(22, full))).toBe(
      'There are 22 intervals for 13 numbers that the model has to find; at least 23 are needed',
    );
  });
});

describe('the fixed effects', () => {
  it('leave out what doesn’t differ', () => {
    expect(designed(many(24)).fixed).toEqual(['interval_within', 'interval_mean']);
    expect(designed(many(24, (i) => ({ weeks: 5 + 2 * (Math.floor(i / 3) % 2) }))).fixed).toEqual(['interval_within']);
    expect(designed(many(24, (i) => ({ limb: cycle('LR', i) }))).fixed).toContain('limb');
    expect(designed(many(24, () => ({ shod: 'shod', season: 'Jan–Mar' }))).fixed).not.toContain('shod');
  });

  it('leave out a circumstance known for less than 80 percent, and name it', () => {
    const some = (known: number) => designed(many(30, (i) => ({ shod: i < known ? cycle('xy', i) : '' })));
    expect(some(24)).toMatchObject({ missing: 6, notKnown: [] });
    expect(some(24).fixed).toContain('shod');
    expect(some(23)).toMatchObject({ missing: 0, notKnown: ['shod'] });
    expect(some(23).fixed).not.toContain('shod');
  });

  it('lose no rows to a circumstance that is the same wherever it is known', () => {
    expect(designed(many(24, (i) => ({ shod: i < 3 ? '' : 'shod' })))).toMatchObject({ missing: 0, notKnown: [] });
  });

  it('leave out what no longer differs once rows are left out', () => {
    const rows = many(30, (i) => ({
      season: i === 0 ? 'Jan–Mar' : 'Apr–Jun',
      farrier: i === 0 ? 'A' : 'B',
      shod: i === 0 ? '' : cycle('xy', i),
    }));
    expect(designed(rows)).toMatchObject({ missing: 1, farrierAs: 'not in the model' });
    expect(designed(rows).fixed).toEqual(['interval_within', 'interval_mean', 'shod']);
  });

  it('hold two to four farriers; five are a spread', () => {
    const by = (farriers: string) => designed(many(30, (i) => ({ farrier: cycle(farriers, i) })));
    expect(by('A')).toMatchObject({ farrierAs: 'not in the model', fixed: ['interval_within', 'interval_mean'] });
    expect(by('AB').farrierAs).toBe('fixed');
    expect(by('ABCD')).toMatchObject({ farrierAs: 'fixed', random: [{ by: ['horse'] }] });
    expect(by('ABCD').fixed).toContain('farrier');
    expect(by('ABCDE')).toMatchObject({ farrierAs: 'random', random: [{ by: ['horse'] }, { by: ['farrier'] }] });
    expect(by('ABCDE').fixed).not.toContain('farrier');
  });
});

describe('the groups that vary', () => {
  const groups = (rows: readonly Row[]) => designed(rows).random.map(({ by }) => by.join(' '));

  it('are intervals where feet share them, and feet where a horse has more than one', () => {
    const feet = ['LF', 'RF'].flatMap((limb) => many(24, (i) => ({ limb, start: i })));
    expect(groups(feet)).toEqual(['horse interval', 'horse limb', 'horse']);
    expect(groups(many(24))).toEqual(['horse']);
  });

  it('are not feet that were each measured over one interval only', () => {
    const once = many(24, (i) => ({ horse: `horse ${i >> 1}`, limb: cycle('LR', i), weeks: 5 + 2 * (i % 2) }));
    expect(groups(once)).toEqual(['horse']);
  });

  it('are horses with slopes of their own where asked', () => {
    expect(designed(many(24), true).random).toEqual([horseTerm(true)]);
    expect(horseTerm(true)).toEqual({ by: ['horse'], slopes: ['interval_within'], correlated: false });
    expect(horseTerm(false)).toEqual({ by: ['horse'] });
  });
});

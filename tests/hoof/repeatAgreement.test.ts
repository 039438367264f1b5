import { describe, expect, it } from 'vitest';
import { observerAgreement, repeatabilities, smallestChange } from '../../lib/hoof/repeatAgreement.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { icc, limitsOfAgreement } from '../../lib/stats/index.ts';

/** Feet read by people: one entry a foot, its readings in order of the observers. */
function feet(readings: readonly (readonly number[])[], observers: readonly string[] = ['Ida', 'Tom', 'Ann']) {
  const rows = readings.flatMap((own, foot) => own.map((value, i) => ({ foot, value, observer: observers[i] })));
  return plainTable({
    horse_id: { values: rows.map(({ foot }) => `h${foot}`) },
    date: { kind: 'date', values: new Float64Array(rows.length).fill(20_000) },
    limb: { values: rows.map(() => 'LF') },
    moment: { values: rows.map(() => 'before') },
    observer: { values: rows.map(({ observer }) => observer) },
    toe_angle_deg: { unit: 'deg', values: Float64Array.from(rows, ({ value }) => value) },
    note: { values: rows.map(() => 'x') },
  });
}

const readings = [
  [50, 51],
  [53, 53],
  [48, 50],
  [55, 54],
];

describe('repeatabilities', () => {
  it('pools the spread of readings of one foot', () => {
    const [row] = repeatabilities(feet(readings), ['toe_angle_deg']);
    // Half of 1² + 0 + 2² + 1² over four feet.
    expect(row.withinSd).toBeCloseTo(Math.sqrt(6 / 2 / 4), 12);
    expect(row.repeatability).toBeCloseTo(1.959964 * Math.SQRT2 * row.withinSd, 6);
    expect({ feet: row.feet, readings: row.readings, unit: row.unit }).toEqual({ feet: 4, readings: 8, unit: 'deg' });
    expect(row.icc.value).toBeCloseTo(icc(readings).ICC1.value, 12);
  });

  it('counts only feet with two readings or more, and leaves out columns without any, and words', () => {
    const some = feet([...readings, [60], [Number.NaN, 51]]);
    expect(repeatabilities(some, ['toe_angle_deg', 'note'])).toEqual(
      repeatabilities(feet(readings), ['toe_angle_deg']),
    );
    expect(repeatabilities(feet([[50], [51]]), ['toe_angle_deg'])).toEqual([]);
  });

  it('says how many readings tell feet apart with a reliability of 0.9', () => {
    const of = (rows: number[][]) => repeatabilities(feet(rows), ['toe_angle_deg'])[0];
    const { icc: one, worthwhile } = of(readings.map((row) => [...row]));
    const reliability = (k: number) => (k * one.value) / (1 + (k - 1) * one.value);
    expect(reliability(worthwhile)).toBeGreaterThanOrEqual(0.9);
    expect(reliability(worthwhile - 1)).toBeLessThan(0.9);
    expect(
      of([
        [50, 50],
        [60, 60],
      ]).worthwhile,
    ).toBe(1);
    expect(
      of([
        [50, 60],
        [60, 50],
        [50, 60],
      ]).worthwhile,
    ).toBeNaN();
  });
});

describe('observerAgreement', () => {
  it('holds the two people with most feet in common against each other, in order of their names', () => {
    const pair = observerAgreement(feet([...readings, [51, 52, 53]]), 'toe_angle_deg')!;
    expect([pair.first, pair.second]).toEqual(['Ida', 'Tom']);
    expect(Array.from(pair.a)).toEqual([50, 53, 48, 55, 51]);
    const direct = limitsOfAgreement(pair.a, pair.b);
    expect({ mean: pair.mean, lower: pair.lower, n: pair.n }).toEqual({ mean: direct.mean, lower: direct.lower, n: 5 });
  });

  it('looks for the two with most feet in common among those who are named', () => {
    const once = (one: string, two: string, a: number, b: number) => ({ names: [one, two], values: [a, b] });
    const seen = [
      once('Tom', 'Ann', 1, 2),
      once('', 'Ida', 3, 4),
      once('Tom', 'Ida', 5, 6),
      once('', 'Ida', 7, 8),
      once('Ida', 'Tom', 9, 10),
      once('', 'Ida', 11, 12),
    ];
    const table = plainTable({
      horse_id: { values: seen.flatMap((_, foot) => [`h${foot}`, `h${foot}`]) },
      observer: { values: seen.flatMap(({ names }) => names) },
      toe_angle_deg: { unit: 'deg', values: Float64Array.from(seen.flatMap(({ values }) => values)) },
    });
    const pair = observerAgreement(table, 'toe_angle_deg')!;
    expect([pair.first, pair.second]).toEqual(['Ida', 'Tom']);
    expect([pair.a, pair.b]).toEqual([Float64Array.of(6, 9), Float64Array.of(5, 10)]);
  });

  it('takes the first reading against the second in a table that names nobody', () => {
    const table = plainTable({
      horse_id: { values: ['Kit', 'Kit', 'Moss'] },
      toe_angle_deg: { unit: 'deg', values: Float64Array.of(50, 52, 60) },
    });
    expect(observerAgreement(table, 'toe_angle_deg')).toMatchObject({
      ...{ first: 'first reading', a: Float64Array.of(50), b: Float64Array.of(52), mean: expect.any(Number) },
    });
  });

  it('averages several readings of one person', () => {
    const pair = observerAgreement(
      feet(
        [
          [50, 52, 53],
          [51, 53, 50],
        ],
        ['Ida', 'Ida', 'Tom'],
      ),
      'toe_angle_deg',
    )!;
    expect(Array.from(pair.a)).toEqual([51, 52]);
    expect(Array.from(pair.b)).toEqual([53, 50]);
  });

  it('takes the first reading against the second where nobody is named, or one person read all', () => {
    for (const names of [
      ['', ''],
      ['Ida', 'Ida'],
    ]) {
      const pair = observerAgreement(feet(readings, names), 'toe_angle_deg')!;
      expect([pair.first, pair.second]).toEqual(['first reading', 'second reading']);
      expect(Array.from(pair.b)).toEqual([51, 53, 50, 54]);
    }
  });

  it('has nothing to say where no foot was read twice', () => {
    expect(observerAgreement(feet([[50], [51]]), 'toe_angle_deg')).toBeUndefined();
  });
});

describe('smallestChange', () => {
  it('shrinks with the root of the readings of each day', () => {
    expect(smallestChange(1, 1)).toBeCloseTo(2.7718, 4);
    expect(smallestChange(1, 4)).toBeCloseTo(smallestChange(1, 1) / 2, 12);
  });
});

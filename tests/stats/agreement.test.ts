import { describe, expect, it } from 'vitest';
import { concordance } from '../../lib/stats/concordance.ts';
import { icc } from '../../lib/stats/icc.ts';
import { limitsOfAgreement, sdOfSingleDifferences } from '../../lib/stats/limitsOfAgreement.ts';
import { repeatability, repeatabilityCoefficient } from '../../lib/stats/repeatability.ts';

describe('limitsOfAgreement', () => {
  const [a, b] = [
    [10, 12, 11, 14, 9],
    [9, 12, 12, 12, 8],
  ];
  it('turn over when the two change places', () => {
    const [there, back] = [limitsOfAgreement(a, b), limitsOfAgreement(b, a)];
    expect(back.mean).toBe(-there.mean);
    expect(back.lower).toBeCloseTo(-there.upper, 12);
    expect(back.sd).toBeCloseTo(there.sd, 14);
    expect(back.p).toBeCloseTo(there.p, 12);
    expect(back.lowerInterval[0]).toBeCloseTo(-there.upperInterval[1], 12);
  });
  it('move with a constant added to one side', () => {
    const [plain, moved] = [
      limitsOfAgreement(a, b),
      limitsOfAgreement(
        a.map((value) => value + 100),
        b,
      ),
    ];
    expect(moved.lower).toBeCloseTo(plain.lower + 100, 10);
    expect(moved.sd).toBeCloseTo(plain.sd, 10);
  });
  it('of identical readings are zero', () => {
    const found = limitsOfAgreement(a, a);
    expect([found.mean, found.sd, found.lower, found.upper]).toEqual([0, 0, 0, 0]);
  });
  it('take whole pairs only, and two at least', () => {
    expect(limitsOfAgreement([1, NaN, 3], [2, 3, NaN])).toMatchObject({
      n: 1,
      missing: 2,
      mean: -1,
      sd: NaN,
      lower: NaN,
    });
    expect(limitsOfAgreement([], []).mean).toBeNaN();
  });
  it('widen with the level, the older form alone stays at twice the SD', () => {
    const [narrow, wide] = [limitsOfAgreement(a, b, 0.5), limitsOfAgreement(a, b, 0.99)];
    expect(wide.upper).toBeGreaterThan(narrow.upper);
    expect(wide.in1986.upper).toBe(narrow.in1986.upper);
    expect(narrow.in1986.upper).toBe(narrow.mean + 2 * narrow.sd);
  });
  it('of means hide part of the scatter, which comes back', () => {
    expect(sdOfSingleDifferences(3, [])).toBe(3);
    const both = [
      { withinSd: 4, readings: 2 },
      { withinSd: 9, readings: 1 },
    ];
    expect(sdOfSingleDifferences(3, both)).toBe(Math.sqrt(9 + 8));
  });
});

describe('repeatability', () => {
  it('of two readings each is Dahlberg’s error, √(Σd² / 2n)', () => {
    const found = repeatability([
      [1, 3],
      [5, 5],
      [8, 9],
    ]);
    expect(found.withinSd).toBeCloseTo(Math.sqrt((4 + 0 + 1) / 6), 14);
    expect([found.subjects, found.n, found.df, found.missing]).toEqual([3, 6, 3, 0]);
    expect(found.percent).toBeCloseTo((100 * found.withinSd) / (31 / 6), 12);
  });
  it('takes as many readings as there are, leaves out the missing and subjects read once', () => {
    const found = repeatability([[1, 2, 3], [4, NaN, 6], [7, NaN, NaN], [NaN]]);
    expect([found.subjects, found.n, found.df, found.missing]).toEqual([2, 5, 3, 5]);
    expect(found.withinSd).toBeCloseTo(Math.sqrt(4 / 3), 14);
    // Mean square between 10.8, k₀ = 5 − 13/5 = 2.4.
    expect(found.betweenSd).toBeCloseTo(Math.sqrt((10.8 - 4 / 3) / 2.4), 12);
  });
  it('says nothing where nobody was read twice', () => {
    expect(repeatability([[1], [2]])).toMatchObject({ subjects: 0, n: 0, withinSd: NaN, coefficient: NaN });
    expect(repeatability([]).withinSd).toBeNaN();
  });
  it('shows no difference between subjects as zero, not as a negative variance', () => {
    const readings = [
      [1, 9],
      [9, 1],
    ];
    expect(repeatability(readings).betweenSd).toBe(0);
  });
  it('limits hold the deviation and widen with the level', () => {
    const readings = [
      [1, 3],
      [5, 6],
      [8, 9],
    ];
    const [narrow, wide] = [repeatability(readings, 0.5), repeatability(readings, 0.99)];
    expect(narrow.lower).toBeLessThan(narrow.withinSd);
    expect(narrow.upper).toBeGreaterThan(narrow.withinSd);
    expect(wide.lower).toBeLessThan(narrow.lower);
    expect(wide.upper).toBeGreaterThan(narrow.upper);
  });
  it('the coefficient is 2.77 times one reading’s deviation', () => {
    expect(repeatabilityCoefficient(1)).toBeCloseTo(2.7718, 4);
  });
});

describe('icc', () => {
  const judged = [
    [9, 2, 5, 8],
    [6, 1, 3, 2],
    [8, 4, 6, 8],
    [7, 1, 2, 6],
    [10, 5, 6, 9],
    [6, 2, 4, 7],
  ];
  it('leaves out subjects with a reading missing and counts them', () => {
    const more = icc([...judged, [5, NaN, 4, 4], [null as unknown as number, 1, 2, 3]]);
    expect([more.n, more.k, more.missing]).toEqual([6, 4, 2]);
    expect(more.ICC2).toEqual(icc(judged).ICC2);
  });
  it('consistency does not mind an observer who always reads two more, agreement does', () => {
    const shifted = judged.map(([a, b, c, d]) => [a + 2, b, c, d]);
    expect(icc(shifted).ICC3.value).toBeCloseTo(icc(judged).ICC3.value, 12);
    expect(icc(shifted).ICC2.value).toBeLessThan(icc(judged).ICC2.value);
  });
  it('does not mind the unit nor where zero lies', () => {
    const changed = icc(judged.map((row) => row.map((value) => 1e6 + value / 25.4)));
    for (const form of ['ICC1', 'ICC2', 'ICC3', 'ICC1k', 'ICC2k', 'ICC3k'] as const) {
      expect(changed[form].value).toBeCloseTo(icc(judged)[form].value, 8);
      expect(changed[form].lower).toBeCloseTo(icc(judged)[form].lower, 7);
    }
  });
  it('perfect agreement is 1 in every form, limits too', () => {
    const same = icc([
      [1, 1],
      [2, 2],
      [4, 4],
    ]);
    for (const form of ['ICC1', 'ICC2', 'ICC3', 'ICC1k', 'ICC2k', 'ICC3k'] as const)
      expect(same[form]).toMatchObject({ value: 1, lower: 1, upper: 1, F: Infinity, p: 0 });
    expect([same.semAgreement, same.semConsistency]).toEqual([0, 0]);
  });
  it('observers who differ by a constant agree in consistency only', () => {
    const found = icc([
      [1, 3],
      [2, 4],
      [4, 6],
    ]);
    expect(found.ICC3).toMatchObject({ value: 1, lower: 1, upper: 1 });
    expect(found.ICC2.value).toBeLessThan(1);
    expect(found.semConsistency).toBeCloseTo(0, 12);
    expect(found.semAgreement).toBeCloseTo(Math.SQRT2, 12);
  });
  it('limits narrow with a lower level', () => {
    const [narrow, wide] = [icc(judged, 0.5), icc(judged, 0.99)];
    for (const form of ['ICC1', 'ICC2', 'ICC3k'] as const) {
      expect(wide[form].lower).toBeLessThan(narrow[form].lower);
      expect(wide[form].upper).toBeGreaterThan(narrow[form].upper);
    }
  });
  it('one subject, one observer, or nothing gives NaN; ragged rows are refused', () => {
    expect(icc([[1, 2]]).ICC1.value).toBeNaN();
    expect(icc([[1], [2]]).ICC2.value).toBeNaN();
    expect(icc([])).toMatchObject({ n: 0, k: 0 });
    expect(() => icc([[1, 2], [3]])).toThrow('Rows of 2 readings were expected, found one of 1');
  });
});

describe('concordance', () => {
  it('is 1 only on the line of equality', () => {
    expect(concordance([1, 2, 3], [1, 2, 3])).toMatchObject({ value: 1, lower: 1, upper: 1 });
    expect(concordance([1, 2, 3, 5], [2, 3, 4, 6]).value).toBeLessThan(1);
    expect(concordance([1, 2, 3, 5], [5, 3, 2, 1]).value).toBeLessThan(0);
  });
  it('is the same either way round and takes whole pairs only', () => {
    const [a, b] = [
      [1, 2, 4, 7, NaN],
      [2, 2, 5, 6, 9],
    ];
    expect(concordance(a, b).value).toBeCloseTo(concordance(b, a).value, 14);
    expect(concordance(a, b)).toMatchObject({ n: 4, missing: 1 });
    expect(concordance([2, 2], [3, 3]).value).toBeNaN();
  });
});

import { describe, expect, it } from 'vitest';
import { history } from '../../lib/hoof/history.ts';
import { against, usualOf } from '../../lib/hoof/usual.ts';

const none = Number.NaN;
const codes = (...list: number[]) => ({ codes: Int32Array.from(list), count: Math.max(...list) + 1 });

describe('what is usual in a herd', () => {
  // Feet 0 and 1 in one herd, foot 2 in another, of which foot 2 has one value; row 4 is therapeutic.
  const values = Float64Array.of(1, 3, 9, 3, 99, none, 40, 10);
  const feet = codes(0, 0, 0, 1, 1, 1, 2, 0);
  const herds = codes(0, 0, 0, 0, 0, 0, 1, 0);
  const readings = { rowsOfEach: [[0, 1, 2], [3, 4, 5], [6], [7]], feet, leaveOut: (row: number) => row === 4 };
  const usual = () => usualOf(values, herds, readings);

  it('is the middle of all values, and how far they lie from it', () => {
    const [first, second] = usual();
    // 1, 3, 9, 3 and 10 lie 2, 0, 6, 0 and 7 from 3.
    expect(first).toMatchObject({ median: 3, spread: 1.4826 * 2 });
    expect(second).toMatchObject({ median: 40, spread: 0 });
  });

  it('counts feet once, at however many moments they were measured', () => {
    expect(usual().map(({ feet }) => feet)).toEqual([2, 1]);
  });

  it('knows how a foot’s values lie about their own middle from feet with three values', () => {
    const [first, second] = usual();
    // 1, 3 and 9 lie 2, 0 and 6 from 3.
    expect(first.ownSpread).toBe(1.4826 * 2);
    expect(second.ownSpread).toBeNaN();
  });

  it('is nothing of a herd without values', () => {
    const [empty] = usualOf(new Float64Array(8).fill(none), codes(0, 0, 0, 0, 0, 0, 0, 0), readings);
    expect(empty).toEqual({ median: none, spread: none, feet: 0, ownSpread: none });
  });
});

describe('a value held against the usual', () => {
  const usual = { median: 10, spread: 2, feet: 8, ownSpread: 1 };

  it('is so many spreads from the middle, with its sign', () => {
    expect(against(15, usual, false)).toEqual({ median: 10, feet: 8, distance: 2.5, any: false });
    expect(against(5, usual, true)).toEqual({ median: 10, feet: 8, distance: -2.5, any: true });
  });

  it('says nothing of fewer than eight feet, or of feet that are all alike', () => {
    expect(against(15, { ...usual, feet: 7 }, false)).toBeUndefined();
    expect(against(15, { ...usual, spread: 0 }, false)).toBeUndefined();
    expect(against(15, { ...usual, spread: none }, false)).toBeUndefined();
  });
});

describe('a value held against its own past', () => {
  const earlier = (...rows: [value: number, error: number, date: number][]) =>
    rows.map(([value, error, date]) => ({ value, error, date }));

  it('is nothing where there is no past', () => {
    expect(history(5, 1, [], 1)).toBeUndefined();
  });

  it('changed from the middle, with the error of both', () => {
    // Two errors of 3 and 4 make one of 2.5 for their mean; with 6 now, 6.5.
    expect(history(20, 6, earlier([8, 3, 1], [12, 4, 2]), 1)).toEqual({
      ...{ median: 10, earlier: 2, change: 10, changeError: 6.5, distance: 10 / 6.5, last: { value: 12, date: 2 } },
    });
  });

  it('has a middle of three that is less sure than their mean', () => {
    const own = history(20, 0, earlier([8, 3, 1], [12, 4, 3], [9, 12, 2]), 1)!;
    expect(own).toMatchObject({ median: 9, change: 11, last: { value: 12, date: 3 } });
    expect(own.changeError).toBeCloseTo((13 / 3) * Math.sqrt(Math.PI / 2), 12);
  });

  it('lies as far away as the larger of its error and the usual spread says', () => {
    expect(history(20, 0, earlier([10, 2, 1]), 4)!.distance).toBe(2.5);
    expect(history(20, 0, earlier([10, 2, 1]), none)!.distance).toBe(5);
    expect(history(20, none, earlier([10, 2, 1]), 4)).toMatchObject({ changeError: none, distance: 2.5 });
    expect(history(20, none, earlier([10, 2, 1]), none)!.distance).toBe(0);
  });
});

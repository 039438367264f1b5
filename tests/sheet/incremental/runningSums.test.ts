import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RunningSums } from '../../../lib/sheet/incremental/runningSums.ts';
import { sd, sum } from '../../../lib/stats/index.ts';

const whole = (rows: number) => ({ codes: new Int32Array(rows), count: 1 });
const size = fc.double({ min: 0.001, max: 1000, noNaN: true });
/** What a yard measures: from a thousandth to a thousand, so that the pair of doubles holds every digit of a sum. */
const cell = fc.oneof(
  size,
  size.map((value) => -value),
  fc.constantFrom(0, Number.NaN),
);
const anyNumber = fc.double({ min: -1000, max: 1000 });

describe('RunningSums', () => {
  test('counts and adds up each group, missing values left out', () => {
    const groups = { codes: Int32Array.of(0, 1, 0, 1, 2), count: 3 };
    const values = Float64Array.of(1, 10, 2, Number.NaN, Number.NaN);
    const sums = new RunningSums(values, groups, 1);
    expect([...sums.counts]).toEqual([2, 1, 0]);
    expect([0, 1, 2].map((group) => sums.total(group))).toEqual([3, 10, 0]);
    expect(new RunningSums(values, groups, 2).total(0)).toBe(5);
  });

  test('after any changes it holds the very bits that adding up afresh gives', () => {
    const changes = fc.array(fc.tuple(fc.nat(19), cell), { maxLength: 60 });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 20, maxLength: 20 }), changes, (start, edits) => {
        const values = Float64Array.from(start);
        const sums = new RunningSums(values, whole(20), 1);
        for (const [row, value] of edits) {
          const afresh = sums.replace(0, values[row], value);
          values[row] = value;
          if (afresh) sums.restart(0, [...values.keys()], values);
        }
        expect(sums.total(0)).toBe(new RunningSums(values, whole(20), 1).total(0));
        expect(sums.total(0)).toBeCloseTo(sum(values), 9);
        expect(sums.counts[0]).toBe(values.filter((value) => !Number.isNaN(value)).length);
      }),
    );
  });

  test('beside numbers of any size it keeps 27 digits of the largest that ever stood there', () => {
    const changes = fc.array(fc.tuple(fc.nat(19), anyNumber), { maxLength: 60 });
    fc.assert(
      fc.property(fc.array(anyNumber, { minLength: 20, maxLength: 20 }), changes, (start, edits) => {
        const values = Float64Array.from(start);
        const sums = new RunningSums(values, whole(20), 1);
        let largest = 0;
        const look = (value: number) => {
          if (Math.abs(value) > largest) largest = Math.abs(value);
        };
        start.forEach(look);
        for (const [row, value] of edits) {
          const afresh = sums.replace(0, values[row], value);
          values[row] = value;
          look(value);
          if (afresh) sums.restart(0, [...values.keys()], values);
        }
        const difference = sums.total(0) - new RunningSums(values, whole(20), 1).total(0);
        // What both are rounded by, and what the edits have lost.
        const rounding = 2 ** -52 * Math.abs(sums.total(0));
        expect(Math.abs(difference)).toBeLessThanOrEqual(rounding + 2 ** -90 * largest);
      }),
    );
  });

  test('a huge value that comes and goes leaves nothing behind', () => {
    const values = Float64Array.of(50.1, 51.2, 52.3);
    for (const huge of [1e20, 1e200, Number.MAX_VALUE, Number.POSITIVE_INFINITY]) {
      for (const power of [1, 2] as const) {
        const sums = new RunningSums(values, whole(3), power);
        const before = sums.total(0);
        const settle = (afresh: boolean) => afresh && sums.restart(0, [0, 1, 2], values);
        settle(sums.replace(0, 51.2, huge));
        settle(sums.replace(0, huge, 51.2));
        expect(sums.total(0), `${huge} to the power ${power}`).toBe(before);
      }
    }
  });
});

describe('RunningSums.replace', () => {
  const sumsOf = (values: readonly number[], power: 1 | 2 = 1) =>
    new RunningSums(Float64Array.from(values), whole(values.length), power);

  test('moves the sum by the difference, and the count where a value comes or goes', () => {
    const sums = sumsOf([1, 2, Number.NaN]);
    const replaced = (before: number, now: number) => {
      sums.replace(0, before, now);
      return [sums.counts[0], sums.total(0)];
    };
    expect(replaced(2, 5)).toEqual([2, 6]);
    expect(replaced(Number.NaN, 10)).toEqual([3, 16]);
    expect(replaced(1, Number.NaN)).toEqual([2, 15]);
    expect(replaced(Number.NaN, Number.NaN)).toEqual([2, 15]);
    expect(replaced(5, Number.NaN)).toEqual([1, 10]);
    expect(replaced(10, Number.NaN)).toEqual([0, 0]);
    const squares = sumsOf([1, 2], 2);
    squares.replace(0, 2, 3);
    expect(squares.total(0)).toBe(10);
  });

  test('asks to add up afresh where what leaves is more than 2^40 times what stays, in the sum’s own power', () => {
    expect(sumsOf([1, 2 ** 40]).replace(0, 2 ** 40, 0)).toBe(false);
    expect(sumsOf([1, 2 ** 41]).replace(0, 2 ** 41, 0)).toBe(true);
    expect(sumsOf([1, 2 ** 20], 2).replace(0, 2 ** 20, 0)).toBe(false);
    expect(sumsOf([1, 2 ** 21], 2).replace(0, 2 ** 21, 0)).toBe(true);
    expect(sumsOf([1, 2]).replace(0, Number.NaN, 5)).toBe(false);
  });

  test('of the last value leaves nothing to add up', () => {
    expect(sumsOf([7]).replace(0, 7, Number.NaN)).toBe(false);
  });

  test('keeps what one double has no room for', () => {
    const sums = sumsOf([2 ** 60, 1, 1]);
    expect(sums.total(0)).toBe(2 ** 60);
    sums.replace(0, 2 ** 60, 0);
    expect(sums.total(0)).toBe(2);
  });
});

describe('RunningSums.sd', () => {
  const sdOf = (values: Float64Array) =>
    RunningSums.sd(
      new RunningSums(values, whole(values.length), 1),
      new RunningSums(values, whole(values.length), 2),
      0,
    );

  test('is the standard deviation of statistics, however far from 0 the values lie', () => {
    for (const shift of [0, 50, 1e7, 1e12]) {
      const values = Float64Array.of(2, 4, 4, 4, 5, 5, 7, 9).map((value) => value + shift);
      expect(sdOf(values)).toBeCloseTo(2.138089935299395, 13);
      expect(sdOf(values)).toBeCloseTo(sd(values), 13);
    }
  });

  test('NIST NumAcc4: 1,001 values around ten million have the standard deviation 0.1', () => {
    // NIST Statistical Reference Datasets, univariate, NumAcc4: 10000000.2, then 500 pairs 10000000.1, 10000000.3.
    const values = Float64Array.from({ length: 1001 }, (_, i) =>
      i === 0 ? 1e7 + 0.2 : i % 2 === 1 ? 1e7 + 0.1 : 1e7 + 0.3,
    );
    expect(sdOf(values)).toBeCloseTo(0.1, 8);
  });

  test('equal values have none at all, and fewer than two have no answer', () => {
    for (const value of [0.1, 1 / 3, 52.7, 1e9 / 7, 0])
      for (const n of [2, 3, 1000]) expect(sdOf(new Float64Array(n).fill(value)), `${n} times ${value}`).toBe(0);
    expect(sdOf(Float64Array.of(3))).toBeNaN();
    expect(sdOf(Float64Array.of(Number.NaN, Number.NaN))).toBeNaN();
  });
});

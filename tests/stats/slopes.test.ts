import { describe, expect, it } from 'vitest';
import { kendallTau } from '../../lib/stats/kendallTau.ts';
import { random } from '../../lib/stats/random.ts';
import { siegelSlope } from '../../lib/stats/siegelSlope.ts';
import { type Points, SlopeSelection } from '../../lib/stats/slopeSelection.ts';
import { theilSen } from '../../lib/stats/theilSen.ts';

describe('theilSen', () => {
  it('a quarter of wild points leaves the slope', () => {
    const x = Array.from({ length: 20 }, (_, i) => i);
    const y = x.map((value) => (value % 5 === 2 ? 900 : 3 * value + 1));
    expect(theilSen(x, y).slope).toBe(3);
    expect(theilSen(x, y).intercept).toBe(1);
  });
  it('the interval widens with the level and turns over with y', () => {
    const { normal } = random(6);
    const x = Array.from({ length: 30 }, (_, i) => i);
    const y = x.map((value) => 0.5 * value + 4 * normal());
    const [narrow, wide] = [theilSen(x, y, { level: 0.5 }), theilSen(x, y, { level: 0.99 })];
    expect(wide.lower).toBeLessThan(narrow.lower);
    expect(wide.upper).toBeGreaterThan(narrow.upper);
    const flipped = theilSen(
      x,
      y.map((value) => -value),
      { level: 0.5 },
    );
    expect(flipped.slope).toBeCloseTo(-narrow.slope, 12);
    expect(flipped.lower).toBeCloseTo(-narrow.upper, 12);
  });
  it('does not mind in which order the rows come', () => {
    // Of the six slopes 1, 1, 1, 7/3, 3, 5 the middle ones are 1 and 7/3.
    const inOrder = theilSen([0, 1, 2, 3], [0, 1, 2, 7]);
    expect(inOrder.slope).toBeCloseTo(5 / 3, 14);
    for (const order of [
      [3, 0, 2, 1],
      [2, 3, 1, 0],
    ]) {
      const found = theilSen(
        order,
        order.map((x) => [0, 1, 2, 7][x]),
      );
      expect(found.slope).toBeCloseTo(5 / 3, 14);
      expect([found.lower, found.upper]).toEqual([inOrder.lower, inOrder.upper]);
    }
  });
  it('within groups only rows of one group are paired', () => {
    const x = [1, 2, 3, 11, 12, 13];
    const y = [2, 4, 6, 1, 3, 5];
    expect(theilSen(x, y).slope).toBeLessThan(1);
    const found = theilSen(x, y, { groups: [0, 0, 0, 1, 1, 1] });
    expect([found.slope, found.pairs, found.lower, found.upper]).toEqual([2, 6, 2, 2]);
  });
  it('rows with anything missing are left out and counted', () => {
    const found = theilSen([1, 2, NaN, 4], [1, 2, 3, NaN], { groups: [0, 0, 0, 0] });
    expect([found.n, found.missing, found.slope]).toEqual([2, 2, 1]);
    expect(theilSen([1, 2, 3], [1, 2, 3], { groups: [0, 0, NaN] }).missing).toBe(1);
  });
  it('without two different x there is no slope', () => {
    for (const found of [theilSen([1, 1], [2, 3]), theilSen([], [])]) {
      expect([found.pairs, found.slope, found.lower, found.upper]).toEqual([0, NaN, NaN, NaN]);
      expect([found.intercept, found.interceptOfMedians]).toEqual([NaN, NaN]);
    }
  });
  it('rows need not come in the order of x', () => {
    const found = theilSen([18, 1, 10, 3, 2, 12, 4], [78, 9, 45, 19, 15, 55, 20], { level: 0.93 });
    expect([found.slope, found.lower, found.upper]).toEqual([4, 26 / 7, 35 / 8]);
  });
});

describe('SlopeSelection', () => {
  const drawn = (seed: number, n: number, tied: boolean): Points => {
    const { normal } = random(seed);
    const value = () => (tied ? Math.round(3 * normal()) : normal());
    return { x: Float64Array.from({ length: n }, value).sort(), y: Float64Array.from({ length: n }, value) };
  };
  const every = (blocks: readonly Points[]) => {
    const slopes: number[] = [];
    for (const { x, y } of blocks)
      for (let i = 0; i < x.length; i++)
        for (let j = 0; j < i; j++) if (x[i] !== x[j]) slopes.push((y[i] - y[j]) / (x[i] - x[j]));
    return slopes.sort((a, b) => a - b);
  };
  it.each([true, false])('finds every rank that sorting all slopes finds, ties %s', (tied) => {
    const blocks = [drawn(1, 40, tied), drawn(2, 25, tied)];
    const sorted = every(blocks);
    for (const atOnce of [1e6, 60]) {
      const selection = new SlopeSelection(blocks, atOnce);
      expect(selection.count).toBe(sorted.length);
      for (let rank = 0; rank < sorted.length; rank += 7) expect(selection.atRank(rank)).toBeCloseTo(sorted[rank], 14);
      expect(selection.atRank(sorted.length - 1)).toBe(sorted.at(-1));
    }
  });
  it('a line without scatter has one slope at all ranks', () => {
    const x = Float64Array.from({ length: 200 }, (_, i) => i);
    const selection = new SlopeSelection([{ x, y: new Float64Array(200) }], 100);
    expect(selection.atRank(3) + 0).toBe(0);
    const steep = new SlopeSelection([{ x, y: x.map((value) => 4 * value) }], 100);
    expect(steep.atRank(19000)).toBe(4);
  });
});

describe('kendallTau', () => {
  it('is 1 for the same order and −1 for the opposite one', () => {
    expect(kendallTau([1, 5, 9], [2, 3, 10]).tau).toBe(1);
    expect(kendallTau([1, 5, 9], [3, 2, 1]).tau).toBe(-1);
    expect(kendallTau([1, 5, 9], [3, 2, 1]).s).toBe(-3);
  });
  it('counts as a plain loop does, with ties on either side and on both', () => {
    const { below } = random(4);
    for (let turn = 0; turn < 20; turn++) {
      const x = Array.from({ length: 12 }, () => below(4));
      const y = Array.from({ length: 12 }, () => below(5));
      let s = 0;
      for (let i = 0; i < 12; i++) for (let j = 0; j < i; j++) s += Math.sign(x[i] - x[j]) * Math.sign(y[i] - y[j]);
      expect(kendallTau(x, y).s).toBe(s);
    }
  });
  it('needs two different values on both sides', () => {
    for (const found of [kendallTau([1, 1], [1, 2]), kendallTau([1, 2], [3, 3]), kendallTau([1], [1])])
      expect([found.tau, found.z, found.p]).toEqual([NaN, NaN, NaN]);
    expect(kendallTau([1, NaN, 2], [1, 2, 3])).toMatchObject({ n: 2, missing: 1, tau: 1 });
  });
});

describe('siegelSlope', () => {
  it('nearly half of the points may be wild', () => {
    const x = Array.from({ length: 11 }, (_, i) => i);
    const y = x.map((value) => (value > 6 ? 100 : 2 * value - 1));
    expect(siegelSlope(x, y)).toMatchObject({ n: 11, missing: 0, slope: 2, intercept: -1 });
  });
  it('is missing without two different x', () => {
    expect(siegelSlope([1, 1, NaN], [2, 3, 4])).toMatchObject({ n: 2, missing: 1, slope: NaN, intercept: NaN });
  });
});

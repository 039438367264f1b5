import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { permuteTwoGroups } from '../../lib/stats/permuteTwoGroups.ts';
import { permuteWithin } from '../../lib/stats/permuteWithin.ts';
import { signFlip } from '../../lib/stats/signFlip.ts';

const differences = fc.array(fc.integer({ min: -4, max: 4 }), { minLength: 1, maxLength: 9 });

describe('signFlip', () => {
  it('counts what a plain loop over all patterns counts', () => {
    fc.assert(
      fc.property(differences, (d) => {
        const observed = d.reduce((sum, value) => sum + value, 0);
        let [far, large, small] = [0, 0, 0];
        for (let pattern = 0; pattern < 2 ** d.length; pattern++) {
          const total = d.reduce((sum, value, i) => sum + (pattern & (1 << i) ? value : -value), 0);
          if (Math.abs(total) >= Math.abs(observed)) far++;
          if (total >= observed) large++;
          if (total <= observed) small++;
        }
        const found = signFlip(d);
        expect([found.atLeastAsFar, found.atLeastAsLarge, found.atMostAsLarge]).toEqual([far, large, small]);
        expect(found.total).toBe(2 ** d.length);
        expect(found.p).toBe(far / 2 ** d.length);
      }),
    );
  });
  it('does not mind the unit', () => {
    const d = [0.1, 0.2, 0.3, -0.1, 0.2];
    const counts = [1, 1e-9, 1e9, -1].map((unit) => signFlip(d.map((value) => value * unit)).atLeastAsFar);
    expect(new Set(counts).size).toBe(1);
    expect(signFlip(d.map((value) => -value)).pLess).toBe(signFlip(d).pGreater);
  });
  it('leaves out what is missing, keeps zeros, and knows nothing of nothing', () => {
    const found = signFlip([1, NaN, 0, 2]);
    expect([found.n, found.missing, found.total, found.mean]).toEqual([3, 1, 8, 1]);
    expect(found.atLeastAsFar).toBe(4);
    const none = signFlip([NaN]);
    expect([none.n, none.missing, none.p, none.mean]).toEqual([0, 1, NaN, NaN]);
    expect(signFlip([0, 0]).p).toBe(1);
  });
  it('counts 2³² patterns exactly where most are near', () => {
    const found = signFlip(Array.from({ length: 32 }, () => 1));
    expect([found.atLeastAsFar, found.total, found.exact]).toEqual([2, 2 ** 32, true]);
  });
  it('draws where there are too many patterns, the same for the same seed', () => {
    const d = Array.from({ length: 40 }, (_, i) => i - 18.2);
    const told: number[] = [];
    const options = { draws: 1000, seed: 4, onProgress: (done: number) => told.push(done) };
    const found = signFlip(d, options);
    expect([found.exact, found.total]).toEqual([false, 1000]);
    expect(found.p).toBe((found.atLeastAsFar + 1) / 1001);
    expect(signFlip(d, { draws: 1000, seed: 4 })).toEqual(found);
    expect(signFlip(d, { draws: 1000, seed: 5 }).atLeastAsFar).not.toBe(found.atLeastAsFar);
    expect(told).toHaveLength(100);
    expect(told.at(-1)).toBe(1000);
  });
});

describe('permuteTwoGroups', () => {
  it('of two clear groups only the observed split and its mirror are as far', () => {
    const found = permuteTwoGroups([1, 2, 3], [7, 8, 9]);
    expect([found.atLeastAsFar, found.total, found.difference]).toEqual([2, 20, -6]);
    expect([found.pLess, found.pGreater]).toEqual([0.05, 1]);
  });
  it('groups of different size, with one missing', () => {
    const found = permuteTwoGroups([10, NaN], [1, 2, 3]);
    expect([found.n, found.missing, found.total, found.atLeastAsFar]).toEqual([[1, 3], 1, 4, 1]);
    expect(found.difference).toBe(8);
  });
  it('an empty group gives no p', () => {
    const none = permuteTwoGroups([], [1, 2]);
    expect([none.p, none.difference, none.total]).toEqual([NaN, NaN, NaN]);
    expect(permuteTwoGroups([1], [NaN]).p).toBeNaN();
  });
  it('is the same far from zero', () => {
    const [a, b] = [
      [1, 4, 2, 6],
      [3, 8, 5],
    ];
    const far = permuteTwoGroups(
      a.map((value) => value + 1e6),
      b.map((value) => value + 1e6),
    );
    expect(far.atLeastAsFar).toBe(permuteTwoGroups(a, b).atLeastAsFar);
  });
  it('draws with replacement of nothing: a drawn p is near the exact one', () => {
    const [a, b] = [
      [1, 4, 2, 6, 3],
      [3, 8, 5, 9, 7],
    ];
    const exact = permuteTwoGroups(a, b).p;
    const drawn = permuteTwoGroups(a, b, { exactUpTo: 1, draws: 9999, seed: 3 });
    expect(drawn.exact).toBe(false);
    expect(Math.abs(drawn.p - exact)).toBeLessThan(4 * Math.sqrt((exact * (1 - exact)) / 9999));
  });
});

describe('permuteWithin', () => {
  it('shuffles inside groups only: between them the outcome may differ as it likes', () => {
    const [x, groups] = [
      [1, 2, 3, 11, 12, 13],
      [5, 5, 5, 8, 8, 8],
    ];
    const found = permuteWithin(x, [1, 2, 3, 104, 105, 106], groups);
    expect([found.total, found.groups, found.slope, found.atLeastAsFar]).toEqual([36, 2, 1, 2]);
  });
  it('groups of unequal size, of one, and rows with anything missing', () => {
    const found = permuteWithin([1, 2, 3, 4, 5, 6], [2, 4, NaN, 1, 7, 9], [0, 0, 0, 1, 2, 2]);
    expect([found.n, found.missing, found.groups, found.total]).toEqual([5, 1, 3, 4]);
    expect(found.slope).toBe(2);
    expect(found.pGreater).toBe(0.25);
  });
  it('no variation of x inside any group leaves nothing to say', () => {
    const found = permuteWithin([1, 1, 2, 2], [1, 2, 3, 4], [0, 0, 1, 1]);
    expect([found.slope, found.p, found.atLeastAsFar]).toEqual([NaN, NaN, NaN]);
    expect(permuteWithin([], [], []).p).toBeNaN();
  });
  it('a constant outcome is never unusual', () => {
    expect(permuteWithin([1, 2, 3], [5, 5, 5], [0, 0, 0]).p).toBe(1);
  });
  it('drawn shuffles are the same for the same seed and near the exact p', () => {
    const x = [1, 2, 3, 4, 1, 2, 3, 4];
    const y = [1, 3, 2, 5, 2, 1, 4, 3];
    const groups = [0, 0, 0, 0, 1, 1, 1, 1];
    const exact = permuteWithin(x, y, groups);
    expect([exact.exact, exact.total]).toEqual([true, 576]);
    const drawn = permuteWithin(x, y, groups, { exactUpTo: 10, draws: 20000, seed: 9 });
    expect(drawn.exact).toBe(false);
    expect(Math.abs(drawn.p - exact.p)).toBeLessThan(4 * Math.sqrt((exact.p * (1 - exact.p)) / 20000));
    expect(permuteWithin(x, y, groups, { exactUpTo: 10, draws: 500, seed: 1 })).toEqual(
      permuteWithin(x, y, groups, { exactUpTo: 10, draws: 500 }),
    );
  });
});

describe('drawn arrangements', () => {
  it('count as many draws as were asked for, and the observed one once more', () => {
    const told: number[][] = [];
    const found = permuteTwoGroups([1, 2, 3, 4], [5, 6, 7, 8], {
      exactUpTo: 1,
      draws: 300,
      seed: 2,
      onProgress: (...at) => told.push(at),
    });
    expect([found.total, found.exact]).toEqual([300, false]);
    expect(found.p).toBe((found.atLeastAsFar + 1) / 301);
    // Told after every third draw.
    expect(told).toHaveLength(100);
    expect([told[0], told[99]]).toEqual([
      [3, 300],
      [300, 300],
    ]);
  });
  it('of a group without numbers come to nothing', () => {
    for (const [a, b] of [
      [[], [1, 2]],
      [[1, NaN], []],
      [[NaN], [3]],
    ]) {
      const { p, difference, atLeastAsFar } = permuteTwoGroups(a, b);
      expect([p, difference, atLeastAsFar]).toEqual([NaN, NaN, NaN]);
    }
  });
  it('are all looked at as long as there are no more than may be', () => {
    // Three of six in 20 ways.
    const a = [1, 5, 9];
    const b = [2, 3, 11];
    expect(permuteTwoGroups(a, b, { exactUpTo: 20 }).exact).toBe(true);
    expect(permuteTwoGroups(a, b, { exactUpTo: 19 }).exact).toBe(false);
    expect(permuteTwoGroups(a, b, { exactUpTo: 20 }).total).toBe(20);
  });
});

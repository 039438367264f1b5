import { describe, expect, it } from 'vitest';
import { Levels, Values } from '../../../lib/stats/mixed/levels.ts';
import { random } from '../../../lib/stats/random.ts';

describe('Values', () => {
  it('have a code each, in the order in which they were met, and an order of their own', () => {
    const words = new Values();
    expect(['b', 'a', 'b', 'constructor', 'a'].map((word) => words.code(word))).toEqual([0, 1, 0, 2, 1]);
    expect([...words.order()]).toEqual([1, 0, 2]);
    expect([...new Values([10, 9, -1]).order()]).toEqual([2, 1, 0]);
  });
});

describe('Levels', () => {
  const whole = new Levels([]);
  const horses = new Levels(['horse'], whole);
  const feet = new Levels(['horse', 'limb'], horses);
  for (const [horse, limb] of [
    [4, 1],
    [2, 0],
    [4, 0],
    [4, 1],
  ])
    feet.level(horses.level(0, horse), limb);

  it('are the combinations that were met', () => {
    expect([whole.size, horses.size, feet.size]).toEqual([1, 2, 3]);
    expect([0, 1, 2].map((level) => feet.codesOf(level))).toEqual([
      [4, 1],
      [2, 0],
      [4, 0],
    ]);
    expect(feet.find([4, 0])).toBe(2);
    expect(feet.find([2, 1])).toBeUndefined();
    expect(feet.find([3, 1])).toBeUndefined();
    expect(whole.find([])).toBe(0);
  });

  it('lead to the levels of any of their columns', () => {
    expect([...feet.to(feet)]).toEqual([0, 1, 2]);
    expect([...feet.to(horses)]).toEqual([0, 1, 0]);
    expect([...feet.to(whole)]).toEqual([0, 0, 0]);
    const limbs = new Levels(['limb'], whole);
    for (const limb of [0, 1]) limbs.level(0, limb);
    expect([...feet.to(limbs)]).toEqual([1, 0, 0]);
  });

  it('are put in the order of their values, the outer ones first', () => {
    // Codes 2 and 4 of the horses stand for values that come in the order 4, 2.
    const order = horses.settle(Int32Array.of(0), Int32Array.of(0, 1, 4, 3, 2));
    expect([...order]).toEqual([0, 1]);
    expect([...feet.settle(order, Int32Array.of(0, 1))]).toEqual([2, 0, 1]);
    expect([0, 1, 2].map((level) => feet.codesOf(level))).toEqual([
      [2, 0],
      [2, 1],
      [4, 0],
    ]);
    expect(feet.find([2, 1])).toBe(1);
    expect(feet.level(0, 1)).toBe(1);
  });

  it('are found again among many', () => {
    const { below } = random(2);
    const pairs = Array.from({ length: 5000 }, () => [below(700), below(50)]);
    const many = new Levels(['horse', 'visit'], new Levels(['horse'], whole));
    const levels = pairs.map(([outer, code]) => many.level(outer, code));
    expect(many.size).toBe(new Set(pairs.map(String)).size);
    expect(pairs.map(([outer, code]) => many.level(outer, code))).toEqual(levels);
    expect(levels.map((level) => [many.outer[level], many.codes[level]])).toEqual(pairs);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OrderedGroups } from '../../../lib/sheet/incremental/orderedGroups.ts';
import { quantile } from '../../../lib/stats/index.ts';

// Adding 0 turns −0 into 0: which of the two stands first among equals means nothing.
const cell = fc.oneof(fc.integer({ min: -5, max: 5 }), fc.double(), fc.constant(Number.NaN)).map((value) => value + 0);

describe('OrderedGroups', () => {
  test('gives the smallest, the largest and any quantile of a group', () => {
    const groups = { codes: Int32Array.of(0, 1, 0, 0, 2, 0), count: 3 };
    const ordered = new OrderedGroups(Float64Array.of(3, 7, 1, 2, Number.NaN, 10), groups);
    expect([ordered.min(0), ordered.max(0), ordered.quantile(0, 0.25)]).toEqual([1, 10, 1.75]);
    expect([ordered.min(1), ordered.max(1), ordered.quantile(1, 0.5)]).toEqual([7, 7, 7]);
    expect([ordered.min(2), ordered.max(2), ordered.quantile(2, 0.5)]).toEqual([Number.NaN, Number.NaN, Number.NaN]);
  });

  test('after any changes it answers as one made afresh, groups small and large', () => {
    const changes = fc.array(fc.tuple(fc.nat(59), cell), { maxLength: 80 });
    fc.assert(
      fc.property(fc.array(cell, { minLength: 60, maxLength: 60 }), changes, (start, edits) => {
        const values = Float64Array.from(start);
        const groups = { codes: Int32Array.from(values, (_, row) => (row % 10 === 0 ? 1 : 0)), count: 2 };
        const ordered = new OrderedGroups(values, groups);
        for (const [row, value] of edits) {
          ordered.replace(groups.codes[row], values[row], value);
          values[row] = value;
        }
        for (const group of [0, 1]) {
          const own = values.filter((_, row) => groups.codes[row] === group);
          for (const share of [0, 0.1, 0.5, 0.75, 1])
            expect(ordered.quantile(group, share)).toEqual(quantile(own, share));
          expect(ordered.min(group)).toEqual(quantile(own, 0));
          expect(ordered.max(group)).toEqual(quantile(own, 1));
        }
      }),
    );
  });
});

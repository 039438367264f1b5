import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ExactSums } from '../../lib/stats/exactSums.ts';

/** A double as a whole number of units of 2^-1200, and the product of two. */
function whole(value: number): bigint {
  const bits = new DataView(new ArrayBuffer(8));
  bits.setFloat64(0, value);
  const all = bits.getBigUint64(0);
  const exponent = Number((all >> 52n) & 0x7ffn);
  const mantissa = (all & ((1n << 52n) - 1n)) | (exponent > 0 ? 1n << 52n : 0n);
  const size = mantissa << BigInt(Math.max(exponent, 1) - 1075 + 1200);
  return value < 0 ? -size : size;
}
const times = (a: number, b: number) => (whole(a) * whole(b)) >> 1200n;
const total = (sums: ExactSums, at = 0) => sums.whole(at) << BigInt(1200 + 32 * sums.lowest);

/** Of many sizes, and none so small that its product with another is lost. */
const number = fc
  .tuple(
    fc.double({ min: 1, max: 2, maxExcluded: true, noNaN: true }),
    fc.integer({ min: -120, max: 120 }),
    fc.boolean(),
  )
  .map(([part, exponent, negative]) => (negative ? -1 : 1) * part * 2 ** exponent);
const numbers = fc.array(number, { maxLength: 60 });

describe('ExactSums', () => {
  it('hold the sum of any numbers and of any products, to the last bit', () => {
    fc.assert(
      fc.property(numbers, fc.array(fc.tuple(number, number), { maxLength: 40 }), (single, products) => {
        const sums = new ExactSums(1);
        for (const value of single) sums.add(0, value);
        for (const [a, b] of products) sums.addProduct(0, a, b);
        const expected =
          single.reduce((sum, value) => sum + whole(value), 0n) +
          products.reduce((sum, [a, b]) => sum + times(a, b), 0n);
        expect(total(sums)).toBe(expected);
        sums.carry();
        expect(total(sums)).toBe(expected);
        sums.settle(Int32Array.of(0));
        expect(total(sums)).toBe(expected);
      }),
    );
  });

  it('are written in one way, whatever the order and wherever the parts were added', () => {
    const written = (sums: ExactSums, order: number[]) => {
      sums.settle(Int32Array.from(order));
      return { lowest: sums.lowest, digits: sums.digits.map((digit) => [...digit]) };
    };
    const entries = fc.array(fc.tuple(fc.integer({ min: 0, max: 2 }), number), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(
        entries.chain((all) =>
          fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }), fc.nat(all.length)),
        ),
        ([all, shuffled, cut]) => {
          const of = (some: typeof all) => {
            const sums = new ExactSums(3);
            for (const [at, value] of some) sums.add(at, value);
            return sums;
          };
          const merged = new ExactSums();
          merged.addAll(of(shuffled.slice(cut)), Int32Array.of(2, 0, 1));
          merged.addAll(of(shuffled.slice(0, cut)), Int32Array.of(2, 0, 1));
          expect(written(merged, [2, 0, 1])).toEqual(written(of(all), [0, 1, 2]));
        },
      ),
    );
  });

  it('come to nothing where all is taken away again, whatever the sizes', () => {
    fc.assert(
      fc.property(numbers, (values) => {
        const sums = new ExactSums(1);
        for (const value of values) sums.add(0, value);
        for (const value of values) sums.add(0, -value);
        sums.settle(Int32Array.of(0));
        expect(sums.at(0)).toBe(0);
        expect(sums.digits).toEqual([]);
      }),
    );
  });

  it('are read within a unit of the last digit', () => {
    fc.assert(
      fc.property(numbers, (values) => {
        const sums = new ExactSums(1);
        for (const value of values) sums.add(0, value);
        sums.carry();
        const exact = values.reduce((sum, value) => sum + whole(value), 0n);
        const error = whole(sums.at(0)) - exact;
        expect((error < 0n ? -error : error) << 52n <= (exact < 0n ? -exact : exact)).toBe(true);
      }),
    );
  });

  it('carry in time when one digit is added to more often than it has room for', () => {
    const sums = new ExactSums(1);
    const count = 2 ** 23 + 5;
    for (let i = 0; i < count; i++) sums.add(0, 2147483647.25);
    expect(total(sums)).toBe(whole(2147483647.25) * BigInt(count));
  });

  it('add so many times another sum', () => {
    const [one, two] = [new ExactSums(1), new ExactSums(1)];
    for (const value of [1e16, 1, 1e-9]) one.add(0, value);
    two.addTimes(0, 0.1, one, 0);
    expect(total(two)).toBe(times(1e16, 0.1) + times(1, 0.1) + times(1e-9, 0.1));
    two.addTimes(0, -0.1, one, 0);
    expect(total(two)).toBe(0n);
  });

  it('grow, keep what they have, and are cleared one by one', () => {
    const sums = new ExactSums(1);
    sums.add(0, 0.5);
    sums.grow(3);
    sums.add(2, 2 ** 40);
    expect([0, 1, 2].map((at) => sums.at(at))).toEqual([0.5, 0, 2 ** 40]);
    sums.clear(0);
    expect([0, 1, 2].map((at) => sums.at(at))).toEqual([0, 0, 2 ** 40]);
  });

  it('refuse what they would lose', () => {
    const sums = new ExactSums(1);
    for (const value of [Number.NaN, Infinity, 1e200]) expect(() => sums.add(0, value)).toThrow(/without loss/);
    expect(() => sums.add(0, 1e-290)).toThrow(/without loss/);
  });
});

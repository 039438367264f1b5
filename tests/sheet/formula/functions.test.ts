import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { functions, type PlainFunction, signature } from '../../../lib/sheet/formula/functions.ts';
import { eachOf, type Kernel } from '../../../lib/sheet/formula/kernels.ts';
import { fillSlope, type Operation, operators, signs } from '../../../lib/sheet/formula/operators.ts';

interface Named {
  readonly name: string;
  readonly arguments: 1 | 2;
  readonly operation: Operation;
}

const plain = [...functions.values()].filter((row): row is PlainFunction => row.sort === 'plain');

/** Every operation of the language, whether written as a sign or by name. */
const operations: readonly Named[] = [
  ...Object.entries(operators).map(([name, operation]) => ({ name, arguments: 2 as const, operation })),
  ...Object.entries(signs).map(([name, operation]) => ({ name: `${name}x`, arguments: 1 as const, operation })),
  ...plain.map((row) => ({ name: row.name, arguments: row.parameters.length as 1 | 2, operation: row })),
];
const logical = ['&&', '||', '!x'];

const anyNumber = fc.oneof(
  fc.constantFrom(Number.NaN, 0, -0, 1, -1, 0.5, 2, -2.5, 1e200, -1e200, 1e-300, 49.5, -49.5),
  fc.double({ noDefaultInfinity: true }),
);
const truth = fc.constantFrom(0, 1, Number.NaN);
const valuesFor = (name: string) => (logical.includes(name) ? truth : anyNumber);

/** As a whole column's slopes are filled, for one row. */
function slopeAt(operation: Operation, argument: number, x: number, y: number, result: number): number {
  const out = new Float64Array(1);
  fillSlope(operation, argument, [Float64Array.of(x), Float64Array.of(y)], Float64Array.of(result), out);
  return out[0];
}

describe.each(operations)('$name', ({ name, arguments: count, operation }) => {
  const { of, kernel, slopes, sql, words } = operation;

  test('never gives an infinite number', () => {
    fc.assert(
      fc.property(valuesFor(name), valuesFor(name), (x, y) => {
        expect(Math.abs(of(x, y))).not.toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });

  test('leaves missing missing, unless it is there to see to it', () => {
    const sees = ['is_missing', 'coalesce', '&&', '||'].includes(name);
    fc.assert(
      fc.property(anyNumber, (x) => {
        expect(Number.isNaN(of(Number.NaN, x))).toBe(
          !sees || (name === 'coalesce' && Number.isNaN(x)) || (name === '||' && x !== 1) || (name === '&&' && x !== 0),
        );
        if (count === 2 && !sees) expect(of(x, Number.NaN)).toBeNaN();
      }),
    );
  });

  test('gives the same over a block as value by value, also written over what it reads', () => {
    const blocks = fc.array(valuesFor(name), { minLength: 8, maxLength: 8 });
    const run = (loop: Kernel, x: number[], y: number[], into: 'a third' | 'x' | 'y') => {
      const [a, b, out] = [x, y, new Array(8).fill(7)].map((values) => Float64Array.from([9, ...values, 9, 9, 9, 9]));
      loop(into === 'x' ? a : into === 'y' ? b : out, 1, a, 1, b, 1, 8);
      return [...(into === 'x' ? a : into === 'y' ? b : out)];
    };
    fc.assert(
      fc.property(blocks, blocks, fc.constantFrom('a third' as const, 'x' as const, 'y' as const), (x, y, into) => {
        const expected = [9, ...x.map((value, at) => of(value, y[at]) + 0), 9, 9, 9, 9];
        expect(run(kernel ?? eachOf(of), x, y, into).map((value) => value + 0)).toEqual(expected);
      }),
    );
  });

  test('has slopes that agree with small differences', () => {
    expect(slopes.length).toBeGreaterThanOrEqual(count);
    if (logical.includes(name)) return;
    const smooth = fc.double({ min: 0.11, max: 0.93, noNaN: true });
    fc.assert(
      fc.property(smooth, fc.double({ min: 1.07, max: 3.9, noNaN: true }), fc.boolean(), (low, high, turned) => {
        const one = count === 1;
        const [x, y] = turned && !one && name !== '%' ? [high, low] : [low, high];
        for (let argument = 0; argument < count; argument++) {
          const step = 1e-5;
          const at = (by: number) => (argument === 0 ? of(x + by, y) : of(x, y + by));
          // Rounding and comparing jump: there the slope is 0 but for the jump.
          const difference = at(step) - at(-step) === 1 ? 0 : (at(step) - at(-step)) / (2 * step);
          const slope = slopeAt(operation, argument, x, y, of(x, y));
          if (Math.abs(difference) > 1e4) return;
          expect(Math.abs(slope - difference)).toBeLessThan(1e-5 * (1 + Math.abs(slope)) + 1e-6);
        }
      }),
    );
  });

  test('says its arguments, in SQL and in words', () => {
    const args = ['p', 'q'].slice(0, count);
    for (const text of [sql(...args), words(...args)]) {
      expect(text).not.toMatch(/undefined|null|NaN/);
      for (const arg of args) expect(text).toMatch(new RegExp(`\\b${arg}\\b`));
    }
  });
});

describe('slopes', () => {
  test('fill a column, value by value', () => {
    const [x, y] = [Float64Array.of(2, 3), Float64Array.of(5, 7)];
    const out = new Float64Array(2);
    fillSlope(operators['*'], 0, [x, y], Float64Array.of(10, 21), out);
    expect([...out]).toEqual([5, 7]);
    fillSlope(operators['/'], 1, [x, y], Float64Array.of(0.4, 3 / 7), out);
    expect(out[0]).toBeCloseTo(-2 / 25, 15);
    fillSlope(functions.get('sqrt') as PlainFunction, 0, [Float64Array.of(4, 9)], Float64Array.of(2, 3), out);
    expect([...out]).toEqual([0.25, 1 / 6]);
  });

  test('are missing at a corner and 0 where a power does not depend on its base', () => {
    expect(slopeAt(operators['**'], 0, 0, 0, 1)).toBe(0);
    expect(slopeAt(operators['**'], 1, -2, 3, -8)).toBe(0);
    expect(slopeAt(operators['**'], 1, 0, 2, 0)).toBe(0);
    // 7 % 2 is 7 - 3 · 2, and -7 % 2 is -7 + 3 · 2.
    expect([slopeAt(operators['%'], 1, 7, 2, 1), slopeAt(operators['%'], 1, -7, 2, -1)]).toEqual([-3, 3]);
    expect(slopeAt(functions.get('hypot') as PlainFunction, 0, 0, 0, 0)).toBeNaN();
  });

  test('of coalesce go to the one that was taken', () => {
    const coalesce = functions.get('coalesce') as PlainFunction;
    expect([0, 1].map((argument) => slopeAt(coalesce, argument, 1, 2, 1))).toEqual([1, 0]);
    expect([0, 1].map((argument) => slopeAt(coalesce, argument, Number.NaN, 2, 2))).toEqual([0, 1]);
  });
});

describe('the answers of single functions', () => {
  const of = (name: string, x: number, y = Number.NaN) => (functions.get(name) as PlainFunction).of(x, y);

  test('rounding takes a half away from nought, so that changing sides changes only the sign', () => {
    expect([0.5, 1.5, 2.5, -0.5, -2.5, 2.4].map((x) => of('round', x))).toEqual([1, 2, 3, -1, -3, 2]);
    expect(of('round', 0.49999999999999994)).toBe(0);
  });

  test('a remainder has the sign of the left side', () => {
    expect([operators['%'].of(7, 3), operators['%'].of(-7, 3), operators['%'].of(7, -3)]).toEqual([1, -1, 1]);
  });

  test('what is known decides between yes and no', () => {
    expect([operators['&&'].of(Number.NaN, 0), operators['||'].of(Number.NaN, 1)]).toEqual([0, 1]);
  });

  test('the angle of a line counts from along, counter-clockwise', () => {
    expect(of('atan2', 1, 0)).toBe(Math.PI / 2);
    expect(of('atan2', 0, -1)).toBe(Math.PI);
    expect(of('atan2', -0, -1)).toBe(Math.PI);
    expect(of('atan2', 0, -0)).toBe(0);
    expect(of('hypot', 3, 4)).toBe(5);
  });
});

describe('the list of functions', () => {
  const all = [...functions.values()];

  test('says of each what it is, without a full stop', () => {
    for (const row of all) {
      expect(row.about.length, row.name).toBeGreaterThan(3);
      expect(row.about, row.name).not.toMatch(/[.]$/);
    }
  });

  test('names each under its own name, once', () => {
    for (const [name, row] of functions) expect(row.name).toBe(name);
    expect(functions.get('constructor')).toBeUndefined();
    expect(functions.get('__proto__')).toBeUndefined();
  });

  test('shows how each is written', () => {
    expect(signature(functions.get('clamp')!)).toBe('clamp(x, low, high)');
    expect(signature(functions.get('least')!)).toBe('least(x, y, …)');
    expect(signature(functions.get('quantile')!)).toBe('quantile(x, p, …keys)');
    expect(signature(functions.get('pi')!)).toBe('pi()');
  });

  test('says each form in words', () => {
    for (const row of all)
      if (row.sort === 'form') expect(row.words('p', 'q', 'r').length, row.name).toBeGreaterThan(0);
  });
});

import { say } from '../../words/say.ts';
import type { Kernel } from './kernels.ts';
import * as kernels from './kernels.ts';
import type { ArithmeticOperator, ComparisonOperator, LogicalOperator } from './syntax.ts';

/** All that the readings need to know of an operation on one or two values; in a resolved tree none takes more. */
export interface Operation {
  /** The value: a missing argument gives a missing result, and so does whatever has no finite answer. */
  readonly of: (x: number, y: number) => number;
  /** The same over a block of values, for those that are asked often. */
  readonly kernel?: Kernel;
  /** The derivative by each argument. */
  readonly slopes: readonly Slope[];
  /**
   * Standard SQL with the same answer, `NULL` for missing. An argument may stand in it more than once: hand in
   * a column name or a literal, not a long expression.
   */
  readonly sql: (...args: readonly string[]) => string;
  /** How to say it, from the words of the arguments. */
  readonly words: (...args: readonly string[]) => string;
}

/** A derivative: a number where it is the same everywhere, else from the arguments and the result. */
export type Slope = number | ((x: number, y: number, result: number) => number);

export type BinaryOperator = ArithmeticOperator | ComparisonOperator | LogicalOperator;

/** Missing for whatever is not finite; a zero loses its sign. */
export function finite(value: number): number {
  return value + (value - value);
}

const flat = [0, 0];

function comparison(of: (x: number, y: number) => boolean, kernel: Kernel, sql: string, words: string): Operation {
  return {
    kernel,
    of: (x, y) => (Number.isNaN(x) || Number.isNaN(y) ? Number.NaN : of(x, y) ? 1 : 0),
    slopes: flat,
    sql: (x, y) => `(${x} ${sql} ${y})`,
    words: (x, y) => say`${x} ${words} ${y}`,
  };
}

/** The operators between two values. `%` is the remainder with the sign of the left side, as in ECMAScript and SQL. */
export const operators: Readonly<Record<BinaryOperator, Operation>> = {
  '+': {
    of: (x, y) => finite(x + y),
    kernel: kernels.add,
    slopes: [1, 1],
    sql: (x, y) => `(${x} + ${y})`,
    words: (x, y) => say`${x} plus ${y}`,
  },
  '-': {
    of: (x, y) => finite(x - y),
    kernel: kernels.subtract,
    slopes: [1, -1],
    sql: (x, y) => `(${x} - ${y})`,
    words: (x, y) => say`${x} minus ${y}`,
  },
  '*': {
    of: (x, y) => finite(x * y),
    kernel: kernels.multiply,
    slopes: [(_, y) => y, (x) => x],
    sql: (x, y) => `(${x} * ${y})`,
    words: (x, y) => say`${x} times ${y}`,
  },
  '/': {
    of: (x, y) => finite(x / y),
    kernel: kernels.divide,
    slopes: [(_, y) => 1 / y, (_, y, result) => -result / y],
    sql: (x, y) => `(${x} / NULLIF(${y}, 0))`,
    words: (x, y) => say`${x} divided by ${y}`,
  },
  '%': {
    of: (x, y) => finite(x % y),
    slopes: [1, (x, y) => -Math.trunc(x / y)],
    sql: (x, y) => `MOD(${x}, NULLIF(${y}, 0))`,
    words: (x, y) => say`what is left of ${x} after whole times ${y}`,
  },
  '**': {
    // ECMAScript says that a missing number to the power 0 is 1.
    of: (x, y) => (Number.isNaN(x) ? x : finite(x ** y)),
    slopes: [(x, y) => (y === 0 ? 0 : y * x ** (y - 1)), (x, _, result) => (x > 0 ? result * Math.log(x) : 0)],
    sql: (x, y) =>
      `CASE WHEN ${x} > 0 OR (${x} < 0 AND ${y} = FLOOR(${y})) OR (${x} = 0 AND ${y} >= 0) THEN POWER(${x}, ${y}) END`,
    words: (x, y) => say`${x} to the power ${y}`,
  },
  '<': comparison((x, y) => x < y, kernels.less, '<', say`is less than`),
  '<=': comparison((x, y) => x <= y, kernels.atMost, '<=', say`is at most`),
  '>': comparison((x, y) => x > y, kernels.turned(kernels.less), '>', say`is more than`),
  '>=': comparison((x, y) => x >= y, kernels.turned(kernels.atMost), '>=', say`is at least`),
  '==': comparison((x, y) => x === y, kernels.equal, '=', say`is`),
  '!=': comparison((x, y) => x !== y, kernels.unequal, '<>', say`is not`),
  // Three-valued: what is known decides where it can.
  '&&': {
    of: (x, y) => (x === 0 || y === 0 ? 0 : x * y),
    kernel: kernels.and,
    slopes: flat,
    sql: (x, y) => `(${x} AND ${y})`,
    words: (x, y) => say`${x} and ${y}`,
  },
  '||': {
    of: (x, y) => (x === 1 || y === 1 ? 1 : x + y),
    kernel: kernels.or,
    slopes: flat,
    sql: (x, y) => `(${x} OR ${y})`,
    words: (x, y) => say`${x} or ${y}`,
  },
};

/** The signs before one value. */
export const signs: Readonly<Record<'-' | '!', Operation>> = {
  '-': { of: (x) => 0 - x, slopes: [-1], sql: (x) => `(-${x})`, words: (x) => say`minus ${x}` },
  '!': { of: (x) => 1 - x, slopes: [0], sql: (x) => `(NOT ${x})`, words: (x) => say`not ${x}` },
};

/** Fills `out` with the derivative of an operation by one of its arguments, value by value. */
export function fillSlope(
  operation: Operation,
  argument: number,
  args: readonly Float64Array[],
  result: Float64Array,
  out: Float64Array,
): void {
  const slope = operation.slopes[argument];
  if (typeof slope === 'number') {
    out.fill(slope);
    return;
  }
  const x = args[0];
  const y = args[1] ?? x;
  for (let row = 0; row < out.length; row++) out[row] = slope(x[row], y[row], result[row]);
}

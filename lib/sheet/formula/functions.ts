import { say } from '../../words/say.ts';
import type { Kind } from '../column.ts';
import { listed } from '../listed.ts';
import * as kernels from './kernels.ts';
import { finite, type Operation } from './operators.ts';
import { type Summary, summaries } from './summaries.ts';

/**
 * A function of one value or two, row by row. `takes` and `gives` are its unit rule:
 * takes `any` unit, `pure` numbers, an `angle` (handed over in radians) or values `alike` (of one dimension and kind, in
 * the first one's unit); gives the unit of the `first`, its `root`, `1`, an `angle` (computed in radians, turned into
 * degrees) or a `boolean`. `kinds` are numbers where left out.
 */
export interface PlainFunction extends Operation {
  readonly sort: 'plain';
  readonly name: string;
  readonly parameters: readonly string[];
  /** Takes any further arguments like the last; resolved into a chain of twos. */
  readonly rest?: boolean;
  readonly about: string;
  readonly kinds?: readonly Kind[];
  readonly takes: 'any' | 'pure' | 'angle' | 'alike';
  readonly gives: 'first' | 'root' | '1' | 'angle' | 'boolean';
}

/** A way of writing that `resolve` turns into plainer nodes, so that no other reading meets it. */
export interface Form {
  readonly sort: 'form';
  readonly name: string;
  readonly parameters: readonly string[];
  readonly about: string;
  readonly words: (...args: readonly string[]) => string;
}

export type FunctionRow = PlainFunction | Summary | Form;

const plain: readonly PlainFunction[] = [
  {
    sort: 'plain',
    name: 'abs',
    parameters: ['x'],
    about: say`the size without the sign`,
    takes: 'any',
    gives: 'first',
    of: Math.abs,
    kernel: kernels.abs,
    // Equal readings differ by nothing but their error, so at 0 the error stays.
    slopes: [(x) => (x < 0 ? -1 : 1)],
    sql: (x) => `ABS(${x})`,
    words: (x) => say`the size of ${x}`,
  },
  {
    sort: 'plain',
    name: 'sqrt',
    parameters: ['x'],
    about: say`the square root; missing below 0`,
    takes: 'any',
    gives: 'root',
    of: Math.sqrt,
    kernel: kernels.sqrt,
    slopes: [(_x, _y, result) => 0.5 / result],
    sql: (x) => `CASE WHEN ${x} >= 0 THEN SQRT(${x}) END`,
    words: (x) => say`the square root of ${x}`,
  },
  {
    sort: 'plain',
    name: 'exp',
    parameters: ['x'],
    about: say`e to the power x`,
    takes: 'pure',
    gives: '1',
    of: (x) => finite(Math.exp(x)),
    slopes: [(_x, _y, result) => result],
    sql: (x) => `CASE WHEN ${x} < 709.78 THEN EXP(${x}) END`,
    words: (x) => say`e to the power ${x}`,
  },
  {
    sort: 'plain',
    name: 'log',
    parameters: ['x'],
    about: say`the natural logarithm; missing from 0 down`,
    takes: 'pure',
    gives: '1',
    of: (x) => finite(Math.log(x)),
    slopes: [(x) => 1 / x],
    sql: (x) => `CASE WHEN ${x} > 0 THEN LN(${x}) END`,
    words: (x) => say`the natural logarithm of ${x}`,
  },
  {
    sort: 'plain',
    name: 'log10',
    parameters: ['x'],
    about: say`the logarithm to base 10; missing from 0 down`,
    takes: 'pure',
    gives: '1',
    of: (x) => finite(Math.log10(x)),
    slopes: [(x) => Math.LOG10E / x],
    sql: (x) => `CASE WHEN ${x} > 0 THEN LOG10(${x}) END`,
    words: (x) => say`the logarithm to base 10 of ${x}`,
  },
  {
    sort: 'plain',
    name: 'sin',
    parameters: ['angle'],
    about: say`the sine of an angle`,
    takes: 'angle',
    gives: '1',
    of: Math.sin,
    kernel: kernels.sin,
    slopes: [(x) => Math.cos(x)],
    sql: (x) => `SIN(${x})`,
    words: (x) => say`the sine of ${x}`,
  },
  {
    sort: 'plain',
    name: 'cos',
    parameters: ['angle'],
    about: say`the cosine of an angle`,
    takes: 'angle',
    gives: '1',
    of: Math.cos,
    kernel: kernels.cos,
    slopes: [(x) => -Math.sin(x)],
    sql: (x) => `COS(${x})`,
    words: (x) => say`the cosine of ${x}`,
  },
  {
    sort: 'plain',
    name: 'tan',
    parameters: ['angle'],
    about: say`the tangent of an angle`,
    takes: 'angle',
    gives: '1',
    of: Math.tan,
    kernel: kernels.tan,
    slopes: [(_x, _y, result) => 1 + result * result],
    sql: (x) => `TAN(${x})`,
    words: (x) => say`the tangent of ${x}`,
  },
  {
    sort: 'plain',
    name: 'asin',
    parameters: ['x'],
    about: say`the angle with this sine, −90° to 90°; missing beyond −1 to 1`,
    takes: 'pure',
    gives: 'angle',
    of: Math.asin,
    kernel: kernels.asin,
    slopes: [(x) => 1 / Math.sqrt(1 - x * x)],
    sql: (x) => `CASE WHEN ${x} BETWEEN -1 AND 1 THEN ASIN(${x}) END`,
    words: (x) => say`the angle whose sine is ${x}`,
  },
  {
    sort: 'plain',
    name: 'acos',
    parameters: ['x'],
    about: say`the angle with this cosine, 0° to 180°; missing beyond −1 to 1`,
    takes: 'pure',
    gives: 'angle',
    of: Math.acos,
    kernel: kernels.acos,
    slopes: [(x) => -1 / Math.sqrt(1 - x * x)],
    sql: (x) => `CASE WHEN ${x} BETWEEN -1 AND 1 THEN ACOS(${x}) END`,
    words: (x) => say`the angle whose cosine is ${x}`,
  },
  {
    sort: 'plain',
    name: 'atan',
    parameters: ['x'],
    about: say`the angle with this tangent, −90° to 90°`,
    takes: 'pure',
    gives: 'angle',
    of: Math.atan,
    kernel: kernels.atan,
    slopes: [(x) => 1 / (1 + x * x)],
    sql: (x) => `ATAN(${x})`,
    words: (x) => say`the angle whose tangent is ${x}`,
  },
  {
    sort: 'plain',
    name: 'atan2',
    parameters: ['up', 'along'],
    about: say`the angle of a line that goes up and along by these, −180° to 180°, counter-clockwise from along`,
    takes: 'alike',
    gives: 'angle',
    of: (y, x) => Math.atan2(y + 0, x + 0),
    kernel: kernels.atan2,
    slopes: [(y, x) => x / (x * x + y * y), (y, x) => -y / (x * x + y * y)],
    sql: (y, x) => `ATAN2(${y}, ${x})`,
    words: (y, x) => say`the angle of a line that goes up ${y} and along ${x}`,
  },
  {
    sort: 'plain',
    name: 'hypot',
    parameters: ['x', 'y'],
    about: say`the long side of a right-angled triangle with these short sides`,
    takes: 'alike',
    gives: 'first',
    of: (x, y) => finite(Math.sqrt(x * x + y * y)),
    slopes: [(x, _y, result) => x / result, (_x, y, result) => y / result],
    sql: (x, y) => `SQRT(POWER(${x}, 2) + POWER(${y}, 2))`,
    words: (x, y) => say`the straight line across ${x} and ${y}`,
  },
  {
    sort: 'plain',
    name: 'floor',
    parameters: ['x'],
    about: say`the next whole number down, in the unit that x stands in`,
    takes: 'any',
    gives: 'first',
    of: Math.floor,
    slopes: [0],
    sql: (x) => `(1E0 * FLOOR(${x}))`,
    words: (x) => say`${x} rounded down`,
  },
  {
    sort: 'plain',
    name: 'ceil',
    parameters: ['x'],
    about: say`the next whole number up, in the unit that x stands in`,
    takes: 'any',
    gives: 'first',
    of: Math.ceil,
    slopes: [0],
    sql: (x) => `(1E0 * CEIL(${x}))`,
    words: (x) => say`${x} rounded up`,
  },
  {
    sort: 'plain',
    name: 'round',
    parameters: ['x'],
    about: say`the nearest whole number, in the unit that x stands in; a half goes away from 0, so that signs stay fair`,
    takes: 'any',
    gives: 'first',
    of: (x) => Math.sign(x) * Math.round(Math.abs(x)),
    slopes: [0],
    sql: (x) => `ROUND(${x})`,
    words: (x) => say`${x} rounded`,
  },
  {
    sort: 'plain',
    name: 'sign',
    parameters: ['x'],
    about: say`1 above 0, −1 below, 0 at 0`,
    takes: 'any',
    gives: '1',
    of: Math.sign,
    slopes: [0],
    sql: (x) => `(1E0 * SIGN(${x}))`,
    words: (x) => say`the sign of ${x}`,
  },
  {
    sort: 'plain',
    name: 'least',
    parameters: ['x', 'y'],
    rest: true,
    about: say`the smallest of its arguments; missing where one is`,
    kinds: ['number', 'date'],
    takes: 'alike',
    gives: 'first',
    of: Math.min,
    kernel: kernels.min,
    slopes: [(x, y) => (x <= y ? 1 : 0), (x, y) => (x <= y ? 0 : 1)],
    sql: (x, y) => `CASE WHEN ${x} <= ${y} THEN ${x} WHEN ${x} > ${y} THEN ${y} END`,
    words: (...args) => say`the least of ${listed(args)}`,
  },
  {
    sort: 'plain',
    name: 'greatest',
    parameters: ['x', 'y'],
    rest: true,
    about: say`the largest of its arguments; missing where one is`,
    kinds: ['number', 'date'],
    takes: 'alike',
    gives: 'first',
    of: Math.max,
    kernel: kernels.max,
    slopes: [(x, y) => (x >= y ? 1 : 0), (x, y) => (x >= y ? 0 : 1)],
    sql: (x, y) => `CASE WHEN ${x} >= ${y} THEN ${x} WHEN ${x} < ${y} THEN ${y} END`,
    words: (...args) => say`the greatest of ${listed(args)}`,
  },
  {
    sort: 'plain',
    name: 'is_missing',
    parameters: ['x'],
    about: say`whether there is no value`,
    kinds: ['number', 'date', 'boolean', 'text'],
    takes: 'any',
    gives: 'boolean',
    of: (x) => (Number.isNaN(x) ? 1 : 0),
    slopes: [0],
    sql: (x) => `(${x} IS NULL)`,
    words: (x) => say`${x} is missing`,
  },
  {
    sort: 'plain',
    name: 'coalesce',
    parameters: ['x', 'y'],
    rest: true,
    about: say`the first of its arguments that is not missing`,
    kinds: ['number', 'date', 'boolean', 'text'],
    takes: 'alike',
    gives: 'first',
    of: (x, y) => (Number.isNaN(x) ? y : x),
    slopes: [(x) => (Number.isNaN(x) ? 0 : 1), (x) => (Number.isNaN(x) ? 1 : 0)],
    sql: (x, y) => `COALESCE(${x}, ${y})`,
    words: (...args) => args.join(say`, or where that is missing `),
  },
];

const forms: readonly Form[] = [
  {
    sort: 'form',
    name: 'clamp',
    parameters: ['x', 'low', 'high'],
    about: say`x held between low and high`,
    words: (x, low, high) => say`${x} held between ${low} and ${high}`,
  },
  {
    sort: 'form',
    name: 'quantity',
    parameters: ['number', "'unit'"],
    about: say`a number with its unit`,
    words: (x, code) => `${x} ${code}`,
  },
  {
    sort: 'form',
    name: 'in_unit',
    parameters: ['x', "'unit'"],
    about: say`the pure number that x is in this unit`,
    words: (x, code) => say`${x} in ${code}`,
  },
  {
    sort: 'form',
    name: 'radians',
    parameters: ['angle'],
    about: say`the angle as a pure number, its arc for a radius of 1`,
    words: (x) => say`${x} in radians`,
  },
  { sort: 'form', name: 'pi', parameters: [], about: '3.14159…', words: () => 'π' },
  { sort: 'form', name: 'missing', parameters: [], about: say`no value`, words: () => say`no value` },
  {
    sort: 'form',
    name: 'column',
    parameters: ["'name'"],
    about: say`the column of this name, whatever letters it has`,
    words: (name) => name,
  },
];

/** All that can be called by name, in the order in which to list them. Relations come from the table beside these. */
export const functions: ReadonlyMap<string, FunctionRow> = new Map(
  [...plain, ...summaries, ...forms].map((row) => [row.name, row]),
);

/** `clamp(x, low, high)`, `mean(x, ...keys)`: how a call is written. */
export function signature(row: FunctionRow): string {
  const more = row.sort === 'summary' ? ['…keys'] : row.sort === 'plain' && row.rest ? ['…'] : [];
  return `${row.name}(${[...row.parameters, ...more].join(', ')})`;
}

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TextColumn } from '../../../lib/sheet/column.ts';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { print } from '../../../lib/sheet/formula/print.ts';
import { resolve } from '../../../lib/sheet/formula/resolve.ts';
import type { Node } from '../../../lib/sheet/formula/syntax.ts';
import { values } from '../../../lib/sheet/formula/values.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';
import type { Relation } from '../../../lib/sheet/relation.ts';
import type { Table } from '../../../lib/sheet/table.ts';

const none = Number.NaN;

const opposite: Relation = {
  name: 'opposite',
  words: "the other side's",
  match: ['horse_id', 'date'],
  swap: { limb: { LF: 'RF', RF: 'LF', LH: 'RH', RH: 'LH' } },
};
const previous: Relation = { name: 'previous', words: 'the last', match: ['horse_id', 'limb'], before: 'date' };

const feet = plainTable(
  {
    horse_id: { values: ['ash', 'ash', 'ash', 'ash', 'bay', ''] },
    limb: { values: ['LF', 'RF', 'LF', 'RF', 'LF', 'LF'] },
    date: { kind: 'date', values: Float64Array.of(20000, 20000, 20042, 20042, 20000, 20000) },
    toe_angle_deg: { unit: 'deg', values: Float64Array.of(50, 52, 48, none, 55, 45) },
    toe_length_mm: { unit: 'mm', values: Float64Array.of(80, 82, 90, 91, none, 70) },
    girth_cm: { unit: 'cm', values: Float64Array.of(180, 180, 180, 180, 200, none) },
    shod: { kind: 'boolean', values: Float64Array.of(1, 0, none, 1, 0, 1) },
    farrier: { values: ['Ann', 'Ann', 'Bob', '', 'Bob', 'Bob'] },
    x: { values: Float64Array.of(-1, 0, 1, 2, none, 4) },
  },
  [opposite, previous],
);

function computed(formula: string, table: Table = feet, unit?: string): (number | string)[] {
  return [...valuesOf([formula], table, unit)[0]];
}

function valuesOf(formulas: readonly string[], table: Table, unit?: string) {
  const nodes = formulas.map((formula) => resolve(parse(formula), table, unit).node);
  return values(nodes, table).map((column) => (column instanceof TextColumn ? column.values : column));
}

describe('what a formula gives', () => {
  test('arithmetic leaves missing missing', () => {
    expect(computed('x + 1')).toEqual([0, 1, 2, 3, none, 5]);
    expect(computed('2 * x - x / 4')).toEqual([-1.75, 0, 1.75, 3.5, none, 7]);
    expect(computed('-x')).toEqual([1, 0, -1, -2, none, -4]);
    expect(computed('x ** 2')).toEqual([1, 0, 1, 4, none, 16]);
    expect(computed('x ** 0')).toEqual([1, 1, 1, 1, none, 1]);
    expect(computed('-5 % 3 + 0 * x')).toEqual([-2, -2, -2, -2, none, -2]);
  });

  test('a difference divided, as standard scores are, is the same alone and beside its difference', () => {
    const scores = [-0.5, -0.25, 0, 0.25, none, 0.75];
    const differences = [-2, -1, 0, 1, none, 3];
    expect(computed('(x - 1) / 4')).toEqual(scores);
    expect(valuesOf(['(x - 1) / 4', 'x - 1'], feet).map((column) => [...column])).toEqual([scores, differences]);
    expect(computed('(x - 1) / 4 + (x - 1)')).toEqual([-2.5, -1.25, 0, 1.25, none, 3.75]);
    expect(computed('(x - 1) / x')).toEqual([2, none, 0, 0.5, none, 0.75]);
    expect(computed('(1 - x) / 4')).toEqual([0.5, 0.25, 0, -0.25, none, -0.75]);
    expect(computed('(x - 1) / 0')).toEqual(new Array(6).fill(none));
    const [off, spread] = ['x - mean(x)', 'sd(x)'].map((formula) => computed(formula) as number[]);
    expect(computed('(x - mean(x)) / sd(x)')).toEqual(off.map((value, row) => value / spread[row]));
  });

  test('what has no finite answer is missing', () => {
    expect(computed('1 / x')).toEqual([-1, none, 1, 0.5, none, 0.25]);
    expect(computed('sqrt(x)')).toEqual([none, 0, 1, Math.SQRT2, none, 2]);
    expect(computed('log(x)')).toEqual([none, none, 0, Math.log(2), none, Math.log(4)]);
    expect(computed('x ** -1')).toEqual([-1, none, 1, 0.5, none, 0.25]);
    expect(computed('exp(x * 1000)').slice(0, 4)).toEqual([0, 1, none, none]);
    expect(computed('1e308 * x * 10')).toEqual([none, 0, none, none, none, none]);
    expect(computed('1 / (1e308 * x * 10)')).toEqual([none, none, none, none, none, none]);
    expect(computed('x % 0')).toEqual([none, none, none, none, none, none]);
    expect(computed('asin(x)').slice(2, 4)).toEqual([90, none]);
  });

  test('comparisons with missing are missing, and so is a choice by them', () => {
    expect(computed('x > 0')).toEqual([0, 0, 1, 1, none, 1]);
    expect(computed('x >= 0')).toEqual([0, 1, 1, 1, none, 1]);
    expect(computed('x < 0')).toEqual([1, 0, 0, 0, none, 0]);
    expect(computed('x <= 0')).toEqual([1, 1, 0, 0, none, 0]);
    expect(computed('x == 2')).toEqual([0, 0, 0, 1, none, 0]);
    expect(computed('x != 2')).toEqual([1, 1, 1, 0, none, 1]);
    expect(computed('x > 0 ? 10 : 20')).toEqual([20, 20, 10, 10, none, 10]);
    expect(computed('x > 0 ? x : missing()')).toEqual([none, none, 1, 2, none, 4]);
  });

  test('a missing arm that is not chosen does no harm', () => {
    expect(computed('is_missing(x) ? 0 : x')).toEqual([-1, 0, 1, 2, 0, 4]);
    expect(computed('x > 0 ? 1 / x : 0')).toEqual([0, 0, 1, 0.5, none, 0.25]);
  });

  test('and, or and not know three answers', () => {
    const truth = plainTable({
      a: { kind: 'boolean', values: Float64Array.of(0, 0, 0, 1, 1, 1, none, none, none) },
      b: { kind: 'boolean', values: Float64Array.of(0, 1, none, 0, 1, none, 0, 1, none) },
    });
    expect(computed('a && b', truth)).toEqual([0, 0, 0, 0, 1, none, 0, none, none]);
    expect(computed('a || b', truth)).toEqual([0, 1, none, 1, 1, 1, none, 1, none]);
    expect(computed('!a', truth)).toEqual([1, 1, 1, 0, 0, 0, none, none, none]);
  });

  test('angles are degrees outside and radians inside', () => {
    expect(computed('sin(toe_angle_deg)')[0]).toBeCloseTo(Math.sin((50 * Math.PI) / 180), 15);
    expect(computed('atan2(toe_length_mm, toe_length_mm)')[0]).toBeCloseTo(45, 13);
    expect(computed('radians(toe_angle_deg)')[0]).toBeCloseTo((50 * Math.PI) / 180, 15);
  });

  test('text is compared, chosen and looked up', () => {
    expect(computed("limb == 'LF'")).toEqual([1, 0, 1, 0, 1, 1]);
    expect(computed("'LF' != horse_id")).toEqual([1, 1, 1, 1, 1, none]);
    expect(computed("limb == 'no such limb'")).toEqual([0, 0, 0, 0, 0, 0]);
    expect(computed('farrier == horse_id')).toEqual([0, 0, 0, none, 0, none]);
    expect(computed('farrier == farrier')).toEqual([1, 1, 1, none, 1, 1]);
    expect(computed('farrier')).toEqual(['Ann', 'Ann', 'Bob', '', 'Bob', 'Bob']);
    expect(computed("x > 0 ? 'up' : farrier")).toEqual(['Ann', 'Ann', 'up', 'up', '', 'up']);
    expect(computed("x > 0 ? 'up' : missing()")).toEqual(['', '', 'up', 'up', '', 'up']);
    expect(computed("coalesce(farrier, 'nobody')")).toEqual(['Ann', 'Ann', 'Bob', 'nobody', 'Bob', 'Bob']);
    expect(computed('is_missing(farrier)')).toEqual([0, 0, 0, 1, 0, 0]);
    expect(computed("is_missing(limb == 'LF' ? missing() : farrier)")).toEqual([1, 0, 1, 1, 1, 1]);
    expect(computed('previous(farrier)')).toEqual(['', '', 'Ann', 'Ann', '', '']);
    expect(computed('opposite(farrier)')).toEqual(['Ann', 'Ann', '', 'Bob', '', '']);
    expect(computed("opposite(farrier) == 'Bob'")).toEqual([0, 0, none, 1, none, none]);
  });

  test('relations reach other rows', () => {
    expect(computed('toe_angle_deg - opposite(toe_angle_deg)')).toEqual([-2, 2, none, none, none, none]);
    expect(computed('opposite(toe_length_mm * 2) - 1')).toEqual([163, 159, 181, 179, none, none]);
    expect(computed('(toe_length_mm - previous(toe_length_mm)) / (date - previous(date))')).toEqual([
      none,
      none,
      10 / 42,
      9 / 42,
      none,
      none,
    ]);
  });

  test('summaries stand in every row of their group and leave missing out', () => {
    expect(computed('mean(toe_length_mm, horse_id)')).toEqual([85.75, 85.75, 85.75, 85.75, none, 70]);
    expect(computed('count(toe_length_mm, horse_id)')).toEqual([4, 4, 4, 4, 0, 1]);
    expect(computed('sum(toe_length_mm, horse_id)')).toEqual([343, 343, 343, 343, none, 70]);
    expect(computed('sd(toe_length_mm, horse_id)')[4]).toBeNaN();
    expect(computed('sd(toe_length_mm, horse_id)')[5]).toBeNaN();
    expect(computed('median(x)')).toEqual([1, 1, 1, 1, 1, 1]);
    expect(computed('max(x) - min(x)')).toEqual([5, 5, 5, 5, 5, 5]);
    expect(computed('quantile(toe_length_mm, 0.25, horse_id)')[0]).toBe(81.5);
    expect(computed('mean(shod)')[0]).toBe(0.6);
    expect(computed('count(farrier)')[0]).toBe(5);
    expect(computed('sum(x > 0)')[0]).toBe(3);
    expect(computed('mean(toe_length_mm, horse_id) - max(toe_length_mm)')[0]).toBe(85.75 - 91);
    expect(computed('mean(mean(x, horse_id))')[0]).toBeCloseTo((4 * 0.5 + 4) / 5, 15);
  });

  test('dates give days, and days give dates', () => {
    expect(computed('date - previous(date)')).toEqual([none, none, 42, 42, none, none]);
    expect(computed("date >= '2024-11-01'")).toEqual([0, 0, 1, 1, 0, 0]);
    expect(computed("date + quantity(1, 'wk')")[0]).toBe(20007);
    expect(computed("date - '2024-10-01'", feet, 'wk')[0]).toBeCloseTo((20000 - 19997) / 7, 15);
  });

  test('a table without rows gives columns without values', () => {
    const empty = plainTable({ x: { values: new Float64Array(0) }, t: { values: [] } });
    expect(computed('x + mean(x)', empty)).toEqual([]);
    expect(computed("t == 'a' ? t : 'b'", empty)).toEqual([]);
  });

  test('the columns that are given stay as they were, and results are nobody else’s', () => {
    const x = Float64Array.of(1, 2, 3, 4);
    const table = plainTable({ x: { values: x } });
    const [same, twice, again, constant] = valuesOf(['x', 'x * 2', 'x * 2', '7'], table);
    expect(same).not.toBe(x);
    expect(twice).not.toBe(again);
    expect([same, twice, again, constant].map((column) => [...column])).toEqual([
      [1, 2, 3, 4],
      [2, 4, 6, 8],
      [2, 4, 6, 8],
      [7, 7, 7, 7],
    ]);
    expect([...x]).toEqual([1, 2, 3, 4]);
  });

  test('330 cubic inches a pound are 11 922.006 cubic centimetres a kilogram', () => {
    expect(computed("quantity(330, '[in_i]3/[lb_av]')", feet, 'cm3/kg')[0]).toBeCloseTo(11922.006, 3);
    expect(computed("quantity(11900, 'cm3/kg')", feet, '[in_i]3/[lb_av]')[0]).toBeCloseTo(329.39, 2);
    expect(computed("quantity(11880, 'cm3/kg')", feet, '[in_i]3/[lb_av]')[0]).toBeCloseTo(328.84, 2);
    expect(computed("quantity(300, '[in_i]3/[lb_av]')", feet, 'cm3/kg')[0]).toBeCloseTo(10838, 0);
  });
});

describe('tables of any length', () => {
  // A number is its row, so that each answer can be written down.
  const expected: readonly (readonly [string, (row: number) => number | string])[] = [
    ['x', (row) => row],
    ['x * 2 + 1', (row) => 2 * row + 1],
    ['(x + 1) * (x + 2) - (x + 3) * (x + 4)', (row) => -4 * row - 10],
    ['x > 5 ? x * 2 : x * 2 + 1', (row) => (row > 5 ? 2 * row : 2 * row + 1)],
    ['x > 5 ? x * 2 + 1 : x', (row) => (row > 5 ? 2 * row + 1 : row)],
    ['x % 2 == 0 ? (x > 9 ? x * 3 : x * 5) : -x', (row) => (row % 2 === 0 ? row * (row > 9 ? 3 : 5) : -row + 0)],
    ['1 < 2 ? x : 0', (row) => row],
    ['1 > 2 ? x : 7', () => 7],
    ['missing() > 2 ? x : x', () => none],
    ['2 ** 3 + 1', () => 9],
    ["side == 'a' ? 1 : 2", (row) => (row % 3 === 0 ? 1 : row % 3 === 1 ? 2 : none)],
    ["side == 'a' ? 'one' : side", (row) => ['one', 'b', ''][row % 3]],
    ['x ** 2 - x * x', () => 0],
  ];

  test.each([1, 2, 3, 4, 5, 8, 1023, 1024, 1025, 1027, 2048, 2049])('have an answer in each of %i rows', (rows) => {
    const neighbours: Relation = {
      name: 'other',
      words: 'the other',
      match: ['pair'],
      swap: { end: { l: 'r', r: 'l' } },
    };
    const table = plainTable(
      {
        x: { values: Float64Array.from({ length: rows }, (_, row) => row) },
        side: { values: Array.from({ length: rows }, (_, row) => ['a', 'b', ''][row % 3]) },
        pair: { values: Float64Array.from({ length: rows }, (_, row) => row >> 1) },
        end: { values: Array.from({ length: rows }, (_, row) => (row % 2 === 0 ? 'l' : 'r')) },
      },
      [neighbours],
    );
    const sums = [0, 0, 0];
    for (let row = 0; row < rows; row++) sums[row % 3] += row;
    const partner = (row: number) => (row % 2 === 1 ? row - 1 : row + 1 < rows ? row + 1 : none);
    const answers = new Map<string, (row: number) => number | string>([
      ...expected,
      ['x - max(x)', (row) => row - (rows - 1)],
      ['sum(x, side)', (row) => sums[row % 3]],
      ['other(x) + 1', (row) => partner(row) + 1],
    ]);
    const together = valuesOf([...answers.keys()], table);
    [...answers].forEach(([formula, of], index) => {
      const answer = Array.from({ length: rows }, (_, row) => of(row));
      expect([...together[index]], formula).toEqual(answer);
      expect(computed(formula, table), `${formula} alone`).toEqual(answer);
    });
  });
});

describe('block by block against row by row', () => {
  test('random formulas over tables of every awkward length give the same', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(0, 1, 2, 3, 4, 5, 7, 40, 1023, 1024, 1025, 2050),
        fc.integer({ min: 1, max: 1e6 }),
        fc.array(numberNode, { minLength: 1, maxLength: 4 }),
        (rows, seed, nodes) => {
          const table = randomTable(rows, seed);
          const columns = values(nodes, table) as Float64Array[];
          nodes.forEach((node, index) => {
            const naive = new Naive(table);
            const expected = Float64Array.from({ length: rows }, (_, row) => naive.value(node, row) as number);
            for (let row = 0; row < rows; row++)
              if (!alike(columns[index][row], expected[row]))
                throw new Error(`${print(node)} in row ${row}: ${columns[index][row]}, expected ${expected[row]}`);
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  test('text formulas too', () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 1, 5, 1030), fc.integer({ min: 1, max: 1e6 }), textNode, (rows, seed, node) => {
        const table = randomTable(rows, seed);
        const naive = new Naive(table);
        const [column] = values([node], table) as TextColumn[];
        expect(column.values).toEqual(Array.from({ length: rows }, (_, row) => naive.value(node, row)));
      }),
      { numRuns: 100 },
    );
  });

  test('sums and products don’t mind the order of their sides', () => {
    fc.assert(
      fc.property(numberNode, numberNode, fc.constantFrom('+' as const, '*' as const), (left, right, operator) => {
        const table = randomTable(50, 7);
        const [one, other] = values(
          [binary(operator, left, right), binary(operator, right, left)],
          table,
        ) as Float64Array[];
        expect(one).toEqual(other);
      }),
      { numRuns: 100 },
    );
  });
});

describe('units of what comes in', () => {
  test('the same lengths in other units give the same results', () => {
    const formulas = [
      'a + b',
      'a / b',
      'hypot(a, b)',
      'atan2(a, b)',
      'least(a, b, c)',
      'a > b ? c : a',
      'sqrt(a * b) - c',
      'a ** 2 / b',
      'mean(a) - sd(b)',
      "in_unit(a, 'cm') * 2",
      'a % b',
    ];
    const lengths = fc.array(fc.double({ min: 0.1, max: 1000, noNaN: true }), { minLength: 3, maxLength: 20 });
    const units = fc.constantFrom('mm', 'cm', 'm', '[in_i]', '[ft_i]');
    fc.assert(
      fc.property(lengths, units, units, units, (mm, ...codes) => {
        const turned = (from: number[], code: string) => ({
          unit: code,
          values: Float64Array.from(
            from,
            (value) => value / { mm: 1, cm: 10, m: 1000, '[in_i]': 25.4, '[ft_i]': 304.8 }[code]!,
          ),
        });
        const three = [mm, mm.slice().reverse(), mm.map((value) => value * 1.01 + 3)];
        const inMm = plainTable({ a: turned(three[0], 'mm'), b: turned(three[1], 'mm'), c: turned(three[2], 'mm') });
        const mixed = plainTable({
          a: turned(three[0], codes[0]),
          b: turned(three[1], codes[1]),
          c: turned(three[2], codes[2]),
        });
        for (const formula of formulas) {
          const { unit } = resolve(parse(formula), inMm);
          const expected = computed(formula, inMm, unit) as number[];
          const found = computed(formula, mixed, unit) as number[];
          const scale = Math.max(...expected.map(Math.abs));
          found.forEach((value, row) => {
            // A remainder or a comparison may fall to the other side by a rounding.
            if (!/[%>]/.test(formula))
              expect(Math.abs(value - expected[row])).toBeLessThanOrEqual(1e-11 * scale + 1e-9);
          });
        }
      }),
      { numRuns: 60 },
    );
  });
});

function alike(a: number, b: number): boolean {
  return Number.isNaN(a) ? Number.isNaN(b) : a === b || Math.abs(a - b) <= 1e-13 * Math.max(Math.abs(a), Math.abs(b));
}

const place = { start: 0, end: 0 };

function binary(operator: (Node & { kind: 'binary' })['operator'], left: Node, right: Node): Node {
  return { kind: 'binary', operator, left, right, ...place };
}

function call(name: string, ...args: readonly Node[]): Node {
  return { kind: 'call', name, args, ...place };
}

function randomTable(rows: number, seed: number): Table {
  let state = seed;
  const next = () => {
    state = (Math.imul(state, 1103515245) + 12345) & 0x7fffffff;
    return state >>> 8;
  };
  const some = [Number.NaN, 0, 1, -1, 2.5, -3.75, 1e-3, 1e200, -1e200, 7, 100, Math.PI];
  const numbers = () => ({ values: Float64Array.from({ length: rows }, () => some[next() % some.length]) });
  const words = (levels: readonly string[]) => ({
    values: Array.from({ length: rows }, () => levels[next() % levels.length]),
  });
  return plainTable(
    {
      a: numbers(),
      b: numbers(),
      c: numbers(),
      horse_id: words(['', 'ash', 'bay', 'elm']),
      limb: words(['LF', 'RF', 'LH', 'RH', '']),
      note: words(['', 'LF', 'ash', 'x']),
      date: {
        kind: 'date',
        values: Float64Array.from({ length: rows }, () => (next() % 9 === 0 ? none : next() % 40)),
      },
    },
    [opposite, previous],
  );
}

const column = (name: string): Node => ({ kind: 'column', name, ...place });

const { numberNode, textNode } = fc.letrec<{ numberNode: Node; booleanNode: Node; textNode: Node }>((tie) => ({
  numberNode: fc.oneof(
    { depthSize: 'medium', withCrossShrink: true },
    fc.constantFrom('a', 'b', 'c').map(column),
    fc.constantFrom(0, 1, 2, -1, 0.5, 10, 1e200, none).map((value): Node => ({ kind: 'number', value, ...place })),
    fc
      .tuple(fc.constantFrom('+', '-', '*', '/', '%', '**'), tie('numberNode'), tie('numberNode'))
      .map(([operator, left, right]) => binary(operator, left, right)),
    tie('numberNode').map((operand): Node => ({ kind: 'unary', operator: '-', operand, ...place })),
    fc
      .tuple(tie('booleanNode'), tie('numberNode'), tie('numberNode'))
      .map(
        ([test, then, otherwise]): Node =>
          Object.assign({ kind: 'conditional' as const, test, otherwise, ...place }, { then }),
      ),
    fc
      .tuple(
        fc.constantFrom('abs', 'sqrt', 'exp', 'log', 'log10', 'sin', 'atan', 'asin', 'floor', 'ceil', 'round', 'sign'),
        tie('numberNode'),
      )
      .map(([name, x]) => call(name, x)),
    fc
      .tuple(fc.constantFrom('least', 'greatest', 'coalesce', 'atan2', 'hypot'), tie('numberNode'), tie('numberNode'))
      .map(([name, x, y]) => call(name, x, y)),
    fc
      .tuple(
        fc.constantFrom('mean', 'sd', 'min', 'max', 'sum', 'count', 'median'),
        tie('numberNode'),
        fc.subarray(['horse_id', 'limb', 'date']),
      )
      .map(([name, x, keys]) => call(name, x, ...keys.map(column))),
    fc.tuple(fc.constantFrom('opposite', 'previous'), tie('numberNode')).map(([name, x]) => call(name, x)),
  ),
  booleanNode: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc
      .tuple(fc.constantFrom('<', '<=', '>', '>=', '==', '!='), tie('numberNode'), tie('numberNode'))
      .map(([operator, left, right]) => binary(operator, left, right)),
    fc
      .tuple(fc.constantFrom('==', '!='), tie('textNode'), tie('textNode'))
      .map(([operator, left, right]) => binary(operator, left, right)),
    fc
      .tuple(fc.constantFrom('&&', '||'), tie('booleanNode'), tie('booleanNode'))
      .map(([operator, left, right]) => binary(operator, left, right)),
    tie('booleanNode').map((operand): Node => ({ kind: 'unary', operator: '!', operand, ...place })),
    tie('numberNode').map((x) => call('is_missing', x)),
    tie('textNode').map((x) => call('is_missing', x)),
  ),
  textNode: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('horse_id', 'limb', 'note').map(column),
    fc.constantFrom('', 'LF', 'ash', 'new').map((value): Node => ({ kind: 'text', value, ...place })),
    fc
      .tuple(tie('booleanNode'), tie('textNode'), tie('textNode'))
      .map(
        ([test, then, otherwise]): Node =>
          Object.assign({ kind: 'conditional' as const, test, otherwise, ...place }, { then }),
      ),
    fc.tuple(tie('textNode'), tie('textNode')).map(([x, y]) => call('coalesce', x, y)),
    fc.tuple(fc.constantFrom('opposite', 'previous'), tie('textNode')).map(([name, x]) => call(name, x)),
  ),
}));

/** One value at a time, as the language's rules say, sharing nothing with the library but partners and groups. */
class Naive {
  readonly #known = new Map<Node, Map<number, number | string>>();

  constructor(readonly table: Table) {}

  value(node: Node, row: number): number | string {
    let rows = this.#known.get(node);
    if (!rows) {
      rows = new Map();
      this.#known.set(node, rows);
    }
    let value = rows.get(row);
    if (value === undefined) {
      value = this.#value(node, row);
      rows.set(row, value);
    }
    return value;
  }

  #value(node: Node, row: number): number | string {
    switch (node.kind) {
      case 'number':
      case 'text':
        return node.value;
      case 'column': {
        const found = this.table.column(node.name);
        return found.values[row];
      }
      case 'unary': {
        const x = this.value(node.operand, row) as number;
        return node.operator === '-' ? -x : missing(x) ? x : x === 1 ? 0 : 1;
      }
      case 'binary':
        return this.#binary(node.operator, this.value(node.left, row), this.value(node.right, row));
      case 'conditional': {
        const test = this.value(node.test, row);
        if (!missing(test)) return this.value(test === 1 ? node.then : node.otherwise, row);
        return typeof this.value(node.then, row) === 'string' ? '' : none;
      }
      case 'call':
        return this.#call(node, row);
    }
  }

  #binary(operator: string, x: number | string, y: number | string): number {
    if (operator === '&&') return x === 0 || y === 0 ? 0 : missing(x) || missing(y) ? none : 1;
    if (operator === '||') return x === 1 || y === 1 ? 1 : missing(x) || missing(y) ? none : 0;
    if (missing(x) || missing(y)) return none;
    if (operator === '==') return x === y ? 1 : 0;
    if (operator === '!=') return x !== y ? 1 : 0;
    const [a, b] = [x as number, y as number];
    switch (operator) {
      case '+':
        return finite(a + b);
      case '-':
        return finite(a - b);
      case '*':
        return finite(a * b);
      case '/':
        return finite(a / b);
      case '%':
        return finite(a % b);
      case '**':
        return finite(b === 2 ? a * a : a ** b);
      case '<':
        return a < b ? 1 : 0;
      case '<=':
        return a <= b ? 1 : 0;
      case '>':
        return a > b ? 1 : 0;
      default:
        return a >= b ? 1 : 0;
    }
  }

  #call(node: Node & { kind: 'call' }, row: number): number | string {
    const { name, args } = node;
    const relation = this.table.relations.find((known) => known.name === name);
    if (relation) {
      const partner = this.table.partners(relation)[row];
      if (partner >= 0) return this.value(args[0], partner);
      return typeof this.value(args[0], row) === 'string' ? '' : none;
    }
    const x = this.value(args[0], row);
    if (name === 'is_missing') return missing(x) ? 1 : 0;
    if (name === 'coalesce') return missing(x) ? this.value(args[1], row) : x;
    if (['mean', 'sd', 'min', 'max', 'sum', 'count', 'median'].includes(name)) {
      const { codes } = this.table.groups(args.slice(1).map((key) => (key as Node & { kind: 'column' }).name));
      const first = codes.indexOf(codes[row]);
      if (first < row) return this.value(node, first);
      const present: number[] = [];
      for (let other = 0; other < codes.length; other++) {
        const value = codes[other] === codes[row] ? (this.value(args[0], other) as number) : none;
        if (!missing(value)) present.push(value);
      }
      return summary(name, present);
    }
    const y = args.length > 1 ? this.value(args[1], row) : x;
    if (missing(x) || missing(y)) return none;
    const [a, b] = [x as number, y as number];
    switch (name) {
      case 'least':
        return Math.min(a, b);
      case 'greatest':
        return Math.max(a, b);
      case 'hypot':
        return finite(Math.sqrt(a * a + b * b));
      case 'atan2':
        // A minus nought is nought.
        return Math.atan2(a + 0, b + 0);
      case 'round':
        return a < 0 ? -Math.round(-a) : Math.round(a);
      default:
        return finite((Math as unknown as Record<string, (value: number) => number>)[name](a));
    }
  }
}

function missing(value: number | string): boolean {
  return value === '' || Number.isNaN(value);
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : none;
}

function summary(name: string, present: number[]): number {
  const sum = present.reduce((total, value) => total + value, 0);
  const mean = sum / present.length;
  const sorted = present.slice().sort((a, b) => a - b);
  if (name === 'count') return present.length;
  if (present.length === 0) return none;
  if (name === 'sum') return finite(sum);
  if (name === 'mean') return finite(mean);
  if (name === 'min') return sorted[0];
  if (name === 'max') return sorted[sorted.length - 1];
  if (name === 'median') return finite((sorted[(present.length - 1) >> 1] + sorted[present.length >> 1]) / 2);
  if (present.length < 2) return none;
  return finite(Math.sqrt(present.reduce((total, value) => total + (value - mean) ** 2, 0) / (present.length - 1)));
}

import { describe, expect, test } from 'vitest';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { print } from '../../../lib/sheet/formula/print.ts';
import { resolve } from '../../../lib/sheet/formula/resolve.ts';
import { FormulaError } from '../../../lib/sheet/formula/syntax.ts';
import { plainTable } from '../../../lib/sheet/plainTable.ts';

const numbers = new Float64Array(0);
const feet = plainTable(
  {
    horse_id: { values: [] },
    limb: { values: [] },
    date: { kind: 'date', values: numbers },
    toe_angle_deg: { unit: 'deg', values: numbers },
    toe_length_mm: { unit: 'mm', values: numbers },
    girth_cm: { unit: 'cm', values: numbers },
    length_in: { unit: '[in_i]', values: numbers },
    weight_kg: { unit: 'kg', values: numbers },
    area_mm2: { unit: 'mm2', values: numbers },
    share: { unit: '%', values: numbers },
    x: { values: numbers },
    shod: { kind: 'boolean', values: numbers },
    constructor: { values: numbers },
    'odd name': { values: numbers },
    strange: { unit: 'furlong', values: numbers },
  },
  [
    {
      name: 'opposite',
      words: "the other side's",
      match: ['horse_id', 'date'],
      swap: { limb: { LF: 'RF', RF: 'LF' } },
    },
    { name: 'previous', words: "the last visit's", match: ['horse_id', 'limb'], before: 'date' },
    { name: 'neighbour', words: "the neighbour's", match: ['stable'] },
  ],
);

function resolved(formula: string, unit?: string): string {
  const found = resolve(parse(formula), feet, unit);
  return `${print(found.node)} in ${found.kind === 'number' ? found.unit : found.kind}`;
}

function error(formula: string, unit?: string): FormulaError {
  try {
    resolve(parse(formula), feet, unit);
  } catch (caught) {
    if (caught instanceof FormulaError) return caught;
    throw caught;
  }
  throw new Error(`${formula} was taken`);
}

describe('units', () => {
  test.each([
    ['toe_length_mm + girth_cm', 'toe_length_mm + girth_cm * 10 in mm'],
    ['girth_cm - toe_length_mm', 'girth_cm - toe_length_mm * 0.1 in cm'],
    ['toe_length_mm * 2', 'toe_length_mm * 2 in mm'],
    ['toe_length_mm * girth_cm', 'toe_length_mm * girth_cm * 10 in mm2'],
    ['toe_length_mm / girth_cm', 'toe_length_mm / girth_cm * 0.1 in 1'],
    ['weight_kg / area_mm2', 'weight_kg / area_mm2 in kg/mm2'],
    ['toe_length_mm ** 2', 'toe_length_mm ** 2 in mm2'],
    ['toe_length_mm ** -1', 'toe_length_mm ** -1 in 1/mm'],
    ['area_mm2 ** 0.5', 'area_mm2 ** 0.5 in mm'],
    ['sqrt(area_mm2)', 'sqrt(area_mm2) in mm'],
    ['sqrt(toe_length_mm * girth_cm)', 'sqrt(toe_length_mm * girth_cm * 10) in mm'],
    ['toe_length_mm % girth_cm', 'toe_length_mm % (girth_cm * 10) in mm'],
    ['-toe_angle_deg', '-toe_angle_deg in deg'],
    ['abs(toe_angle_deg)', 'abs(toe_angle_deg) in deg'],
    ['sign(toe_angle_deg)', 'sign(toe_angle_deg) in 1'],
    ['share * x', 'share * x * 0.01 in 1'],
    ['share / x', 'share / x * 0.01 in 1'],
    ['x / share', 'x / share * 100 in 1'],
    ['share + x', 'share + x * 100 in %'],
    ['log(share)', 'log(share * 0.01) in 1'],
    ['log(2)', 'log(2) in 1'],
    ['x ** share', 'x ** (share * 0.01) in 1'],
    ['mean(toe_length_mm, horse_id)', 'mean(toe_length_mm, horse_id) in mm'],
    ['sd(date)', 'sd(date) in d'],
    ['mean(toe_length_mm, date, shod, x)', 'mean(toe_length_mm, date, shod, x) in mm'],
    ['count(toe_length_mm)', 'count(toe_length_mm) in 1'],
    ['opposite(toe_length_mm)', 'opposite(toe_length_mm) in mm'],
    ['hypot(toe_length_mm, girth_cm)', 'hypot(toe_length_mm, girth_cm * 10) in mm'],
    [
      'least(girth_cm, toe_length_mm, length_in)',
      'least(least(girth_cm, toe_length_mm * 0.1), length_in * 2.54) in cm',
    ],
  ])('%s', (formula, expected) => {
    expect(resolved(formula)).toBe(expected);
  });

  test('are turned into the one that the column is to have', () => {
    expect(resolved('toe_length_mm', 'cm')).toBe('toe_length_mm * 0.1 in cm');
    expect(resolved('(toe_length_mm - girth_cm) / girth_cm', '%')).toBe(
      '(toe_length_mm - girth_cm * 10) / girth_cm * 10 in %',
    );
    expect(resolved('girth_cm ** 2 * length_in', '[in_i]3')).toMatch(
      /^girth_cm \*\* 2 \* length_in \* 0\.155\d* in \[in_i\]3$/,
    );
    expect(resolved('5', 'mm')).toBe('5 in mm');
    expect(resolved('x > 5', '1')).toBe('x > 5 in boolean');
    expect(resolved('date', 'd')).toBe('date in date');
    expect(resolved('atan(x)', 'rad')).toBe('atan(x) in rad');
  });

  test('of angles are radians inside and degrees outside', () => {
    expect(resolved('sin(toe_angle_deg)')).toBe('sin(toe_angle_deg * 0.017453292519943295) in 1');
    expect(resolved('acos(x)')).toBe('acos(x) * 57.29577951308232 in deg');
    expect(resolved('atan2(toe_length_mm, girth_cm)')).toBe(
      'atan2(toe_length_mm, girth_cm * 10) * 57.29577951308232 in deg',
    );
    expect(resolved('tan(x)')).toBe('tan(x) in 1');
    expect(resolved('radians(toe_angle_deg)')).toBe('toe_angle_deg * 0.017453292519943295 in 1');
    expect(resolved("sin(quantity(30, 'deg'))")).toBe('sin(0.5235987755982988) in 1');
  });

  test('of rates come from days', () => {
    expect(resolved('(toe_angle_deg - previous(toe_angle_deg)) / (date - previous(date))', 'deg/wk')).toBe(
      '(toe_angle_deg - previous(toe_angle_deg)) / (date - previous(date)) * 7 in deg/wk',
    );
  });
});

describe('a bare number beside a unit has that unit', () => {
  test.each([
    ['toe_angle_deg > 50', 'toe_angle_deg > 50 in boolean'],
    ['50 < toe_angle_deg', '50 < toe_angle_deg in boolean'],
    ['girth_cm + 5', 'girth_cm + 5 in cm'],
    ['girth_cm + 2 * 3', 'girth_cm + 2 * 3 in cm'],
    ['girth_cm + 2 ** 3', 'girth_cm + 2 ** 3 in cm'],
    ['5 + girth_cm', '5 + girth_cm in cm'],
    ['share > 50', 'share > 50 in boolean'],
    ['greatest(toe_length_mm, 40 + 5)', 'greatest(toe_length_mm, 40 + 5) in mm'],
    ["limb == 'LF' ? girth_cm : 0", 'limb == "LF" ? girth_cm : 0 in cm'],
    ["toe_angle_deg > (limb == 'LF' ? 50 : -55)", 'toe_angle_deg > (limb == "LF" ? 50 : -55) in boolean'],
    ['coalesce(girth_cm, 180)', 'coalesce(girth_cm, 180) in cm'],
    ['coalesce(180, girth_cm, toe_length_mm)', 'coalesce(coalesce(180, girth_cm), toe_length_mm * 0.1) in cm'],
    ["clamp(toe_length_mm, 60, quantity(10, 'cm'))", 'least(greatest(toe_length_mm, 60), 100) in mm'],
    ["toe_length_mm > quantity(3, 'in')", 'toe_length_mm > 76.2 in boolean'],
    ['toe_length_mm + missing()', 'toe_length_mm + missing() in mm'],
    ["in_unit(toe_length_mm, 'cm') + 1", 'toe_length_mm * 0.1 + 1 in 1'],
  ])('%s', (formula, expected) => {
    expect(resolved(formula)).toBe(expected);
  });

  test('but π has none to take', () => {
    expect(resolved('pi() * x')).toBe('3.141592653589793 * x in 1');
    expect(error('toe_length_mm + pi()').message).toContain("mm and a pure number can't be added");
  });
});

describe('kinds', () => {
  test.each([
    ['date + 42', 'date + 42 in date'],
    ['42 + date', '42 + date in date'],
    ["date - quantity(6, 'wk')", 'date - 42 in date'],
    ["date >= '2026-01-01'", 'date >= 20454 in boolean'],
    ["'2026-01-01' == date", '20454 == date in boolean'],
    ["date - '2026-01-01'", 'date - 20454 in d'],
    ["greatest(date, '2026-01-01')", 'greatest(date, 20454) in date'],
    ["clamp(date, '2026-01-01', date + 7)", 'least(greatest(date, 20454), date + 7) in date'],
    ['mean(date)', 'mean(date) in date'],
    ['shod && x > 1 || !shod', 'shod && x > 1 || !shod in boolean'],
    ['shod == opposite(shod)', 'shod == opposite(shod) in boolean'],
    ['mean(shod, limb)', 'mean(shod ? 1 : 0, limb) in 1'],
    ['sum(x > 5)', 'sum(x > 5 ? 1 : 0) in 1'],
    ["limb == 'LF' ? 'left' : missing()", 'limb == "LF" ? "left" : "" in text'],
    ["limb == 'LF' ? missing() : 'right'", 'limb == "LF" ? "" : "right" in text'],
    ['coalesce(limb, horse_id)', 'coalesce(limb, horse_id) in text'],
    ['shod ? x > 1 : missing()', 'shod ? x > 1 : missing() in boolean'],
    ['is_missing(limb)', 'is_missing(limb) in boolean'],
    ['constructor + column("odd name")', 'constructor + column("odd name") in 1'],
  ])('%s', (formula, expected) => {
    expect(resolved(formula)).toBe(expected);
  });
});

describe('errors say what was found, where, and the way out', () => {
  test('mixing dimensions names both and underlines the place', () => {
    expect(error('toe_length_mm + toe_angle_deg')).toMatchObject({
      message:
        "toe_length_mm + toe_angle_deg: mm and deg can't be added (characters 0 to 29). Compare columns of one kind, or divide first",
      start: 0,
      end: 29,
    });
    expect(error('x * (toe_length_mm - weight_kg)')).toMatchObject({ start: 5, end: 30 });
  });

  test.each([
    ['toe_length_mm > toe_angle_deg', "mm and deg can't be compared"],
    ['toe_length_mm % toe_angle_deg', "mm and deg can't leave a remainder"],
    ['shod ? toe_length_mm : toe_angle_deg', "mm and deg can't stand in one column"],
    ['least(toe_length_mm, 3, weight_kg)', "mm and kg can't be compared"],
    ['atan2(toe_length_mm, weight_kg)', "mm and kg can't be compared"],
    ['toe_length_mm + area_mm2', "mm and mm2 can't be added"],
    ['toe_length_mm + x', "mm and a pure number can't be added"],
    ["in_unit(toe_length_mm, 'deg')", "mm and deg can't be turned into each other"],
    ['exp(toe_length_mm)', 'exp takes a pure number, and this is mm'],
    ['exp(toe_angle_deg)', 'exp takes a pure number, and this is deg'],
    ['girth_cm + 2 * x', "cm and a pure number can't be added"],
    ['girth_cm + x ** 2', "cm and a pure number can't be added"],
    ['girth_cm + 2 ** x', "cm and a pure number can't be added"],
    ['girth_cm ** 2 + toe_angle_deg', "cm2 and deg can't be added"],
    ['sign(x) + girth_cm', "a pure number and cm can't be added"],
    ['sin(toe_length_mm)', 'sin takes an angle, and this is mm'],
    ['sin(30)', "degrees or radians? (characters 0 to 7). Write sin(quantity(30, 'deg'))"],
    ['sqrt(toe_length_mm)', 'mm has no square root'],
    ['toe_length_mm ** 0.5', 'can only be raised to a written-out power'],
    ['toe_length_mm ** x', 'can only be raised to a written-out power'],
    ['x ** toe_length_mm', 'an exponent is a pure number, and this is mm'],
    ['date + date', "a date and a date can't be added"],
    ['42 - date', 'A date takes days: date + 42'],
    ['date + toe_length_mm', "a date and mm can't be added"],
    ['date * 2', 'date is a date, and * takes a number'],
    ['date % 7', 'date is a date, and % takes a number (characters 0 to 4). Take a difference of dates'],
    ['count(x) + toe_length_mm', "a pure number and mm can't be added"],
    ['mean(x) + toe_length_mm', "a pure number and mm can't be added"],
    ['sum(date)', 'date is a date, and sum takes a number'],
    ["date > '2026-02-30'", '"2026-02-30" is no date (characters 7 to 19). Write year-month-day'],
    ['date > 20000', "a date and a pure number can't be compared"],
    ['1 < x < 3', 'For a value between two others write low < x && x < high'],
    ['shod == 1', 'A yes/no stands for itself: write shod or !shod'],
    ['x == shod', 'A yes/no stands for itself: write shod or !shod'],
    ['shod == limb', 'A yes/no stands for itself: write shod or !shod'],
    [
      'x > 1 ? shod : x',
      "a yes/no and a pure number can't stand in one column (characters 0 to 16). Compare columns of one kind",
    ],
    ['shod + 1', 'shod is a yes/no, and + takes a number (characters 0 to 4). To count with it, write shod ? 1 : 0'],
    ["(date > '2026-01-01') + 1", 'date > "2026-01-01" is a yes/no'],
    ['!x', 'x is a number, and ! takes a yes/no (characters 1 to 2). Compare it with something'],
    ['x && shod', 'x is a number, and && takes a yes/no'],
    ['x ? 1 : 2', 'the test before ? takes a yes/no'],
    ["limb < 'LF'", 'texts have no order'],
    ['shod < !shod', 'yes and no have no order'],
    ["limb == ''", 'Write is_missing(x)'],
    ['limb == x', "text and a pure number can't be compared (characters 0 to 9). Compare columns of one kind"],
    ['abs(limb)', 'limb is text, and abs takes a number (characters 4 to 8). Choose another column'],
    ['least(limb, horse_id)', 'limb is text, and least takes a number or a date'],
    ['least(x, limb)', "a pure number and text can't be compared"],
    ['mean(limb)', 'limb is text, and mean takes a number or a date'],
    ['toe_length', 'There is no column toe_length (characters 0 to 10). Did you mean toe_length_mm?'],
    ['farrier', 'There is no column farrier (characters 0 to 7). Choose one from the list of columns'],
    ['column("__proto__")', 'There is no column __proto__'],
    ['oposite(x)', 'There is no function oposite (characters 0 to 10). Did you mean opposite?'],
    ['limb(x)', 'It is a column: write it without brackets'],
    ['eval("1")', 'There is no function eval (characters 0 to 9). Choose one from the list of functions'],
    ['constructor(x)', 'There is no function constructor'],
    ['__proto__(x)', 'There is no function __proto__'],
    ['neighbour(x)', 'neighbour looks at the column stable, which is not there'],
    ['opposite(x, x)', 'opposite was given 2 values (characters 0 to 14). It is written opposite(x)'],
    ['mean()', 'mean was given nothing (characters 0 to 6). It is written mean(x, …keys)'],
    ['least(x)', 'least was given one value (characters 0 to 8). It is written least(x, y, …)'],
    ['pi(1)', 'pi was given one value'],
    ['mean(x, x + 1)', 'x + 1 is no column (characters 8 to 13). After what mean is of come the names of key columns'],
    [
      'max(x, toe_length_mm)',
      'toe_length_mm is measured in mm and makes no groups (characters 7 to 20). For one of two values write greatest(x, y)',
    ],
    ['mean(x, toe_length_mm)', 'Keys are texts, dates or plain numbers'],
    ['mean(x, nobody)', 'There is no column nobody'],
    ['quantile(x, 25)', '25 is no share (characters 12 to 14). Write a number from 0 to 1'],
    ['quantile(x, x)', 'x is no share'],
    ['quantile(x, -0.5)', '-0.5 is no share'],
    ['quantile(x, 1 - 0.5)', '1 - 0.5 is no share'],
    ['quantile(x, !0)', '!0 is no share'],
    ['opposite(5) + toe_length_mm', "a pure number and mm can't be added"],
    ["in_unit(toe_length_mm, 'cm') + toe_length_mm", "a pure number and mm can't be added"],
    ["quantity(x, 'mm')", 'quantity takes a number, and not x'],
    ['quantity(1, x)', 'x is no unit'],
    ["quantity(1, 'furlong')", '“furlong” is not a unit known here'],
    ['strange + 1', '“furlong” is not a unit known here'],
  ])('%s', (formula, words) => {
    const { message, start, end } = error(formula);
    expect(message).toContain(words);
    expect(end).toBeGreaterThan(start);
    expect(end).toBeLessThanOrEqual(formula.length);
    expect(message.endsWith('.')).toBe(false);
  });

  test('a unit that the formula can’t have', () => {
    expect(error('toe_length_mm', 'deg').message).toBe(
      "toe_length_mm gives mm, and the column is to have deg (characters 0 to 13). Change the column's unit or the formula",
    );
    expect(error('limb', 'mm').message).toContain('limb gives text, and the column is to have mm');
    expect(error("'left'", 'mm').message).toContain('"left" gives text, and the column is to have mm');
    expect(error('date + 42', 'wk').message).toContain('date + 42 gives a date, and the column is to have wk');
    expect(error('is_missing(x)', 'mm').message).toContain('is_missing(x) gives a yes/no');
    expect(error('x > 5', 'mm').message).toContain('x > 5 gives a yes/no, and the column is to have mm');
    expect(error('shod && !shod', 'mm').message).toContain('gives a yes/no, and the column is to have mm');
    expect(error('date', 'wk').message).toContain('date gives a date');
    expect(error('x', 'furlong').message).toContain('is not a unit known here');
  });

  test('a relation whose columns are of another kind', () => {
    const turned = plainTable(
      { horse_id: { values: [] }, limb: { values: numbers }, date: { values: [] }, x: { values: numbers } },
      feet.relations,
    );
    const found = (formula: string) => {
      expect(() => resolve(parse(formula), turned)).toThrow(FormulaError);
      return expect(() => resolve(parse(formula), turned));
    };
    found('opposite(x)').toThrow(
      'opposite goes by the words of limb, which are numbers (characters 0 to 11). Give that column another kind',
    );
    found('previous(x)').toThrow('previous goes by the order of date, which is text');
  });

  test('long formulas are cut in messages', () => {
    const long = `toe_angle_deg + (${'toe_length_mm + '.repeat(50)}1)`;
    expect(error(long).message.length).toBeLessThan(250);
  });
});

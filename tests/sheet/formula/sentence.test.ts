import { describe, expect, it } from 'vitest';
import { functions } from '../../../lib/sheet/formula/functions.ts';
import { parse } from '../../../lib/sheet/formula/parse.ts';
import { sentence } from '../../../lib/sheet/formula/sentence.ts';
import type { Node } from '../../../lib/sheet/formula/syntax.ts';
import { relations } from './smallHerd.ts';

const titles = new Map(
  Object.entries({
    toe: 'toe angle',
    heel: 'heel angle',
    inside: 'the inside wall',
    outside: 'the outside wall',
    horse_id: 'horse',
    weight: 'body weight, weighed or estimated',
  }),
);

function say(formula: string): string {
  return sentence(parse(formula), (name) => titles.get(name) ?? name, relations);
}

describe('sentence', () => {
  it.each([
    ['toe - heel', 'toe angle minus heel angle'],
    [
      '(inside - outside) / ((inside + outside) / 2)',
      'the inside wall minus the outside wall, divided by the mean of the inside wall and the outside wall',
    ],
    ['100 * toe / heel', '100 times toe angle divided by heel angle'],
    ['girth ** 2 * length / quantity(11900, "cm3/kg")', 'girth squared times length divided by 11900 cm³/kg'],
    ['toe - opposite(toe)', 'toe angle minus the other side’s toe angle'],
    ['previous(toe - heel)', 'the last visit’s (toe angle minus heel angle)'],
    ['previous(opposite(toe))', 'the last visit’s (the other side’s toe angle)'],
    ['toe - mean(toe, horse_id, limb)', 'toe angle minus the mean of toe angle for each horse and limb'],
    [
      '(toe - mean(toe)) / sd(toe)',
      'toe angle minus the mean of toe angle over the whole table, divided by the standard deviation of toe angle over the whole table',
    ],
    ['quantile(toe, 0.9, limb)', 'the 0.9 quantile of toe angle for each limb'],
    ["limb == 'LF' || limb == 'RF' ? toe : heel", 'if limb is LF or limb is RF, then toe angle, otherwise heel angle'],
    [
      'toe > 55 ? 1 : toe < 45 ? -1 : 0',
      'if toe angle is more than 55, then 1, otherwise if toe angle is less than 45, then minus 1, otherwise 0',
    ],
    ['sqrt(a ** 2 + b ** 2)', 'the square root of (a squared plus b squared)'],
    ['pi() / 4 * width * length', 'π divided by 4, times width times length'],
    ["!shod && name == 'Bella Donna'", 'not shod and name is “Bella Donna”'],
    ['toe * 57.29577951308232', 'toe angle times 57.2958'],
    ['weight / area', 'body weight, weighed or estimated, divided by area'],
    ['area - weight * 2', 'area minus (body weight, weighed or estimated, times 2)'],
    ['area / weight * 2', 'area divided by body weight, weighed or estimated, times 2'],
    ["in_unit(width, 'cm') + quantity(5, '1')", 'width in cm, plus 5'],
    ['missing()', 'no value'],
    ["in_unit(toe, 'deg')", 'toe angle in °'],
    ["coalesce(name, 'deg')", 'name, or where that is missing deg'],
    ['a ** 4', 'a to the power 4'],
    ['sqrt(a) ** 2 + b', '(the square root of a) squared plus b'],
    ['a % b', 'what is left of a after whole times b'],
    ['(a + b + c) / 3', 'the mean of a, b and c'],
    ['(a + b) / 3', 'a plus b, divided by 3'],
    ['(a + b) / c', 'a plus b, divided by c'],
    ['(a - b) / 2', 'a minus b, divided by 2'],
    ['a + b - 2', 'a plus b minus 2'],
    ['(a + b) * 2', 'a plus b, times 2'],
    ['a / 1', 'a divided by 1'],
    ['toe - weight + b', 'toe angle minus body weight, weighed or estimated, plus b'],
    ['toe - weight * 2 + b', 'toe angle minus (body weight, weighed or estimated, times 2) plus b'],
    ['opposite(toe) / heel', 'the other side’s toe angle divided by heel angle'],
    ['(x ? shod : y) && z', '(if x, then shod, otherwise y) and z'],
    ['is_missing(a) == shod', '(a is missing) is shod'],
  ])('says %s as “%s”', (formula, words) => {
    expect(say(formula)).toBe(words);
  });

  it.each([
    ['a - (b - c)', 'a minus (b minus c)', 'a - b - c', 'a minus b minus c'],
    ['(a + b) * c', 'a plus b, times c', 'a + b * c', 'a plus (b times c)'],
    ['a / b * c', 'a divided by b, times c', 'a / (b * c)', 'a divided by (b times c)'],
    ['sqrt(a + b)', 'the square root of (a plus b)', 'sqrt(a) + b', 'the square root of a, plus b'],
    [
      'a - sqrt(b) + c',
      'a minus the square root of b, plus c',
      'a - sqrt(b + c)',
      'a minus the square root of (b plus c)',
    ],
    ['floor(a - b)', '(a minus b) rounded down', 'a - floor(b)', 'a minus b rounded down'],
    ['sqrt(floor(a))', 'the square root of (a rounded down)', 'floor(sqrt(a))', '(the square root of a) rounded down'],
    ['(-a) ** 2', '(minus a) squared', '-(a ** 2)', 'minus a squared'],
    ['a + -b', 'a plus (minus b)', '-a + b', 'minus a plus b'],
    [
      'coalesce(a, b) + c',
      '(a, or where that is missing b) plus c',
      'coalesce(a, b + c)',
      'a, or where that is missing (b plus c)',
    ],
    [
      'a > 1 && (b > 1 || c > 1)',
      'a is more than 1 and (b is more than 1 or c is more than 1)',
      'a > 1 && b > 1 || c > 1',
      '(a is more than 1 and b is more than 1) or c is more than 1',
    ],
    ['(x ? a : b) + c', '(if x, then a, otherwise b) plus c', 'x ? a : b + c', 'if x, then a, otherwise b plus c'],
    [
      'x ? (y ? a : b) : c',
      'if x, then (if y, then a, otherwise b), otherwise c',
      'x ? a : y ? b : c',
      'if x, then a, otherwise if y, then b, otherwise c',
    ],
    ['(a - b) / c > d', 'a minus b, divided by c, is more than d', '(a > b) == c', '(a is more than b) is c'],
  ])('tells %s from its likes', (one, oneWords, other, otherWords) => {
    expect(say(one)).toBe(oneWords);
    expect(say(other)).toBe(otherWords);
  });

  it('says numbers below nought and missing ones, which a resolved formula holds', () => {
    const place = { start: 0, end: 0 };
    const number = (value: number): Node => ({ kind: 'number', value, ...place });
    const less = (right: Node): Node => ({ kind: 'binary', operator: '-', left: parse('a'), right, ...place });
    expect(sentence(less(number(-5)), (name) => name)).toBe('a minus (minus 5)');
    expect(sentence(less(number(Number.NaN)), (name) => name)).toBe('a minus no value');
  });

  it('names a relation that is not known by its name', () => {
    expect(sentence(parse('opposite(toe)'), (name) => name)).toBe('the opposite toe');
  });

  it('has words for all that can be called', () => {
    for (const { name, parameters, sort } of functions.values()) {
      const args = parameters.map((parameter) =>
        parameter === 'p' ? '0.5' : parameter.startsWith("'") ? "'mm'" : parameter,
      );
      const text = say(`${name}(${[...args, ...(sort === 'summary' ? ['horse_id'] : [])].join(', ')})`);
      expect(text).not.toMatch(/undefined|NaN|\(\)/);
      for (const parameter of parameters)
        if (/^\w+$/.test(parameter) && parameter !== 'p') expect(text).toContain(parameter);
    }
  });

  it('says hostile names as they are', () => {
    expect(say('column("__proto__") + column("<script>")')).toBe('__proto__ plus <script>');
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type DisplayUnits,
  displayUnit,
  type FormatOptions,
  formatQuantity,
  symbolOf,
  toDisplay,
} from '../../lib/sheet/display.ts';
import { units as unitRows } from '../../lib/sheet/units.ts';

const mm: DisplayUnits = { length: 'mm', mass: 'kg' };
const cm: DisplayUnits = { length: 'cm', mass: 'kg' };
const inch: DisplayUnits = { length: 'in', mass: 'lb' };

describe('the unit to show', () => {
  test.each([
    ['mm', 'mm', 'cm', '[in_i]'],
    ['cm', 'cm', 'cm', '[in_i]'],
    ['[in_i]', 'mm', 'cm', '[in_i]'],
    ['deg', 'deg', 'deg', 'deg'],
    ['rad', 'deg', 'deg', 'deg'],
    ['kg', 'kg', 'kg', '[lb_av]'],
    ['[lb_av]', 'kg', 'kg', '[lb_av]'],
    ['cm2', 'cm2', 'cm2', '[in_i]2'],
    ['[in_i]2', 'cm2', 'cm2', '[in_i]2'],
    ['kg/cm2', 'kg/cm2', 'kg/cm2', '[lb_av]/[in_i]2'],
    ['mm/d', 'mm/d', 'cm/d', '[in_i]/d'],
    ['deg/wk', 'deg/wk', 'deg/wk', 'deg/wk'],
    ['[in_i]3/[lb_av]', 'cm3/kg', 'cm3/kg', '[in_i]3/[lb_av]'],
    ['1', '1', '1', '1'],
    ['%', '%', '%', '%'],
    ['1/d', '1/d', '1/d', '1/d'],
    ['1/mm', '1/mm', '1/cm', '1/[in_i]'],
  ])('of %s is %s, %s or %s', (code, ...shown) => {
    expect([mm, cm, inch].map((units) => displayUnit(code, units))).toEqual(shown);
  });
});

describe('a quantity in words', () => {
  const say = (value: number, unit: string, options?: FormatOptions) =>
    [mm, cm, inch].map((units) => formatQuantity(value, unit, units, options));

  test('has the decimals that make sense of its unit', () => {
    expect(say(84.23, 'mm')).toEqual(['84.2 mm', '8.42 cm', '3.32 in']);
    expect(say(52, 'deg')[0]).toBe('52.0°');
    expect(say(501.4, 'kg')).toEqual(['501 kg', '501 kg', '1105 lb']);
    expect(say(0.754, '1')[0]).toBe('0.75');
    expect(say(55.24, '%')[0]).toBe('55.2%');
    expect(say(0.614, 'kg/cm2')).toEqual(['0.61 kg/cm²', '0.61 kg/cm²', '8.7 lb/in²']);
    expect(say(0.314, 'mm/d')).toEqual(['0.31 mm/day', '0.031 cm/day', '0.0124 in/day']);
    expect(say(-0.42, 'deg/wk')[0]).toBe('−0.42°/week');
    expect(say(11922.006, 'cm3/kg')).toEqual(['11922 cm³/kg', '11922 cm³/kg', '330 in³/lb']);
  });

  test('follows its error where one is known', () => {
    expect(say(4.23, 'mm', { error: 0.8 })).toEqual(['4.2 ± 0.8 mm', '0.42 ± 0.08 cm', '0.17 ± 0.03 in']);
    expect(say(52, 'deg', { error: 1 })[0]).toBe('52.0 ± 1.0°');
    expect(say(52, 'deg', { error: 0.14 })[0]).toBe('52.00 ± 0.14°');
    expect(say(123.4, 'kg', { error: 12 })[0]).toBe('123 ± 12 kg');
    expect(say(5, 'mm', { error: 0.096 })[0]).toBe('5.00 ± 0.10 mm');
    expect(say(5, 'mm', { error: Number.NaN })[0]).toBe('5.0 mm');
    expect(say(5, 'mm', { error: 0 })[0]).toBe('5.0 mm');
    expect(say(5, 'mm', { error: Number.POSITIVE_INFINITY })[0]).toBe('5.0 mm');
  });

  test('has a sign before differences, and none before nought', () => {
    expect(say(3.26, 'mm', { signed: true })[0]).toBe('+3.3 mm');
    expect(say(-3.26, 'mm', { signed: true })[0]).toBe('−3.3 mm');
    expect(say(-0.01, 'mm', { signed: true })[0]).toBe('0.0 mm');
  });

  test('is not measured where it is missing', () => {
    expect(say(Number.NaN, 'mm', { error: 1 })).toEqual(['not measured', 'not measured', 'not measured']);
    expect(say(Number.POSITIVE_INFINITY, 'mm')[0]).toBe('not measured');
  });

  test('counts one day and two days', () => {
    expect([1, 2, 0].map((value) => formatQuantity(value, 'd', mm))).toEqual(['1 day', '2 days', '0 days']);
    expect(formatQuantity(1, 'mo', mm, { digits: 0 })).toBe('1 month');
  });

  test('takes decimals when told, and three figures where nobody knows better', () => {
    expect(formatQuantity(4.2, 'mm', mm, { digits: 3 })).toBe('4.200 mm');
    expect(formatQuantity(1234.5, 'mm3', mm)).toBe('1235 mm³');
    expect(formatQuantity(0.012345, 'mm.deg', mm)).toBe('0.0123 mm·°');
    expect(formatQuantity(0, 'mm3', mm)).toBe('0.0 mm³');
  });
});

describe('units as they are written', () => {
  test('take raised figures and words after the stroke', () => {
    expect(symbolOf('kg/cm2')).toBe('kg/cm²');
    expect(symbolOf('mm/d')).toBe('mm/day');
    expect(symbolOf('1/wk')).toBe('per week');
    expect(symbolOf('1')).toBe('');
    expect(symbolOf('d')).toBe('days');
    expect(symbolOf('d', true)).toBe('day');
    expect(symbolOf('kg.d')).toBe('kg·day');
    expect(symbolOf('dm')).toBe('dm');
  });
});

describe('what is shown and what is meant', () => {
  test('is the same quantity', () => {
    const code = fc.constantFrom(...unitRows.map((row) => row.code), 'mm2', 'kg/cm2', 'mm/d', 'cm3/kg');
    fc.assert(
      fc.property(
        code,
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom(mm, cm, inch),
        (unit, value, units) => {
          const shown = toDisplay(value, unit, units);
          const back = toDisplay(shown.value, shown.unit, units);
          expect(back).toEqual(shown);
          expect(shown.symbol).toBe(symbolOf(shown.unit));
        },
      ),
    );
  });
});

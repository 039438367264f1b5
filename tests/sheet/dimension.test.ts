import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { conversion, convertible, parseUnit, power, product, pure } from '../../lib/sheet/dimension.ts';
import { prefixes, unitRow, units } from '../../lib/sheet/units.ts';

const none = { length: 0, angle: 0, mass: 0, time: 0 };

function factor(from: string, to: string): number {
  return conversion(parseUnit(from), parseUnit(to));
}

/** Compound units of up to three parts, each to a small power. */
const anyUnit = fc
  .array(fc.tuple(fc.constantFrom(...units.map(({ code }) => code)), fc.constantFrom(-2, -1, 1, 2, 3)), {
    maxLength: 3,
  })
  .map((parts) => parseUnit(parts.map(([code, raised]) => (code === '1' ? '1' : `${code}${raised}`)).join('.') || '1'));

describe('reading units', () => {
  test('knows each dimension and its powers', () => {
    expect(parseUnit('mm2').powers).toEqual({ ...none, length: 2 });
    expect(parseUnit('kg/cm2').powers).toEqual({ ...none, mass: 1, length: -2 });
    expect(parseUnit('deg/wk').powers).toEqual({ ...none, angle: 1, time: -1 });
    expect(parseUnit('[in_i]3/[lb_av]').powers).toEqual({ ...none, length: 3, mass: -1 });
    expect(parseUnit('1').powers).toEqual(none);
    expect(parseUnit('%').powers).toEqual(none);
    expect(parseUnit('1/d').powers).toEqual({ ...none, time: -1 });
    expect(parseUnit('mm-1').powers).toEqual({ ...none, length: -1 });
    expect(parseUnit('m12').powers).toEqual({ ...none, length: 12 });
    expect(parseUnit('m¹²').powers).toEqual({ ...none, length: 12 });
  });

  test('understands what people write and answers in UCUM codes', () => {
    const written = { in: '[in_i]', inches: '[in_i]', '"': '[in_i]', lb: '[lb_av]', lbs: '[lb_av]', '°': 'deg' };
    for (const [name, code] of Object.entries(written)) expect(parseUnit(name).code).toBe(code);
    expect(parseUnit('mm²').code).toBe('mm2');
    expect(parseUnit('in³/lb').code).toBe('[in_i]3/[lb_av]');
    expect(parseUnit('°/week').code).toBe('deg/wk');
    expect(parseUnit(' kg / cm2 ').code).toBe('kg/cm2');
    expect(parseUnit('mm⁻¹').code).toBe('1/mm');
    expect(parseUnit(' 1 / d ').code).toBe('1/d');
  });

  test('the stroke binds only the unit after it', () => {
    expect(parseUnit('kg/cm.d').powers).toEqual({ ...none, mass: 1, length: -1, time: 1 });
    expect(parseUnit('kg/cm/d').powers).toEqual({ ...none, mass: 1, length: -1, time: -1 });
  });

  test('what cancels is gone', () => {
    expect(parseUnit('mm/mm').code).toBe('1');
    expect(parseUnit('mm/mm').terms).toEqual([]);
    expect(parseUnit('mm.mm').code).toBe('mm2');
  });

  test.each([
    '',
    'x',
    'mmm',
    '.',
    'mm..mm',
    '/',
    'kk',
    '__proto__',
    'constructor',
    'mm/',
    '2',
    'mm2.5',
    'klb',
    'mm^2',
    'm\nm',
    'kmetre',
  ])('refuses %j and says what to write', (code) => {
    expect(() => parseUnit(code)).toThrow(/is not a unit known here\. Write a UCUM code such as mm/);
  });

  test('quotes no more than the beginning of a long text', () => {
    expect(() => parseUnit('x'.repeat(10_000))).toThrow(`“${'x'.repeat(60)}” is not a unit known here`);
  });

  test('a unit written out reads back as itself', () => {
    fc.assert(
      fc.property(anyUnit, (unit) => {
        expect(parseUnit(unit.code).powers).toEqual(unit.powers);
        expect(parseUnit(unit.code).code).toBe(unit.code);
      }),
    );
  });

  test('prefixes stand before metres, grams and seconds, and before nothing else', () => {
    for (const [prefix, by] of Object.entries(prefixes)) {
      expect(unitRow(`${prefix}m`)?.factor).toBeCloseTo(by, 12);
      expect(unitRow(`${prefix}[in_i]`)).toBeUndefined();
      expect(unitRow(`${prefix}wk`)).toBeUndefined();
    }
    expect(factor('dm', 'mm')).toBe(100);
    expect(factor('ug', 'g')).toBeCloseTo(1e-6, 20);
  });
});

describe('converting', () => {
  test('gives the exact factors by which inch and pound are defined', () => {
    expect(factor('[in_i]', 'mm')).toBe(25.4);
    expect(factor('[ft_i]', 'cm')).toBe(30.48);
    expect(factor('[lb_av]', 'kg')).toBe(0.45359237);
    expect(factor('[oz_av]', 'g')).toBe(28.349523125);
    expect(factor('[hd_i]', '[in_i]')).toBe(4);
    expect(factor('wk', 'd')).toBe(7);
    expect(factor('mm', 'cm')).toBe(0.1);
    expect(factor('1', '%')).toBe(100);
    expect(factor('deg', 'rad')).toBe(Math.PI / 180);
    expect(factor('cm2', 'mm2')).toBe(100);
    expect(factor('kg/cm2', 'kg/m2')).toBe(10_000);
  });

  test('there and back is where one was', () => {
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.constantFrom(...units), (a, b) => {
        if (a.dimension !== b.dimension) return;
        expect(factor(a.code, b.code) * factor(b.code, a.code)).toBeCloseTo(1, 14);
      }),
    );
  });

  test('never between different things', () => {
    expect(convertible(parseUnit('mm'), parseUnit('deg'))).toBe(false);
    expect(convertible(parseUnit('mm'), parseUnit('mm2'))).toBe(false);
    expect(convertible(parseUnit('deg'), parseUnit('1'))).toBe(false);
    expect(() => factor('mm', 'kg')).toThrow("mm can't be turned into kg: they measure different things");
  });
});

describe('products and powers', () => {
  test('keep one unit for each dimension, the first that comes', () => {
    expect(product(parseUnit('cm'), parseUnit('mm'))).toMatchObject({ unit: { code: 'cm2' }, factor: 0.1 });
    expect(product(parseUnit('mm'), parseUnit('1/[in_i]'))).toMatchObject({ unit: { code: '1' }, factor: 1 / 25.4 });
    expect(product(parseUnit('mm/d'), parseUnit('wk')).unit.code).toBe('mm');
    expect(product(parseUnit('mm/d'), parseUnit('wk')).factor).toBe(7);
  });

  test('a percentage in a product is a pure number', () => {
    expect(product(parseUnit('%'), parseUnit('mm'))).toMatchObject({ unit: { code: 'mm' }, factor: 0.01 });
  });

  test('a root leaves whole powers or is none', () => {
    expect(power(parseUnit('mm2'), 0.5)?.unit.code).toBe('mm');
    expect(power(parseUnit('mm'), 0.5)).toBeUndefined();
    expect(power(parseUnit('mm'), 0)?.unit.code).toBe('1');
    expect(power(parseUnit('mm'), 0)?.unit.terms).toEqual([]);
    expect(power(pure, 0.5)?.unit.code).toBe('1');
  });

  test('add up their powers and multiply their sizes', () => {
    fc.assert(
      fc.property(anyUnit, anyUnit, (a, b) => {
        const { unit, factor } = product(a, b);
        for (const dimension of ['length', 'angle', 'mass', 'time'] as const)
          expect(unit.powers[dimension]).toBe(a.powers[dimension] + b.powers[dimension]);
        expect((unit.factor * factor) / (a.factor * b.factor)).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('the rows of units', () => {
  test('have codes and names of their own', () => {
    const names = units.flatMap((row) => [...new Set([row.code, ...row.names])]);
    expect(new Set(names).size).toBe(names.length);
  });

  test('show themselves by a name', () => {
    for (const row of units) expect(row.names.length).toBeGreaterThan(0);
  });
});

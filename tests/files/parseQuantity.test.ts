import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../lib/files/parseQuantity.ts';

describe('parseQuantity', () => {
  it.each([
    ['52', 52, undefined],
    [' 52.5 ', 52.5, undefined],
    ['-0.5', -0.5, undefined],
    ['+3', 3, undefined],
    ['.5', 0.5, undefined],
    ['1e2', 100, undefined],
    ['52°', 52, 'deg'],
    ['52 º', 52, 'deg'],
    ['52 deg', 52, 'deg'],
    ['52 Degrees', 52, 'deg'],
    ['8.5 cm', 8.5, 'cm'],
    ['85mm', 85, 'mm'],
    ['85 mm.', 85, 'mm'],
    ['3 1/4 in', 3.25, '[in_i]'],
    ['3 1/4"', 3.25, '[in_i]'],
    ['3-1/4 inches', 3.25, '[in_i]'],
    ["3 1/4''", 3.25, '[in_i]'],
    ['3¼”', 3.25, '[in_i]'],
    ['¾ inch', 0.75, '[in_i]'],
    ['3/8 in', 0.375, '[in_i]'],
    ['-3 1/2', -3.5, undefined],
    ['1050 lbs', 1050, '[lb_av]'],
    ['480 kg', 480, 'kg'],
    ['−4', -4, undefined],
  ])('reads %s', (text, value, unit) => {
    expect(parseQuantity(text, '.')).toEqual(unit === undefined ? { value } : { value, unit });
  });

  it('reads either decimal mark where there is one reading', () => {
    for (const mark of ['.', ','] as const) {
      expect(parseQuantity('1,5 cm', mark)).toEqual({ value: 1.5, unit: 'cm' });
      expect(parseQuantity('1.5 cm', mark)).toEqual({ value: 1.5, unit: 'cm' });
      expect(parseQuantity('0,125', mark)).toEqual({ value: 0.125 });
      expect(parseQuantity('12.3456', mark)).toEqual({ value: 12.3456 });
    }
  });

  it('takes signs for thousands only where they have one reading', () => {
    for (const mark of ['.', ','] as const) {
      expect(parseQuantity('1,234.5', mark)).toEqual({ value: 1234.5 });
      expect(parseQuantity('1.234,5 kg', mark)).toEqual({ value: 1234.5, unit: 'kg' });
      expect(parseQuantity('1,234,567', mark)).toEqual({ value: 1_234_567 });
      expect(parseQuantity('1\u00a0234', mark)).toEqual({ value: 1234 });
      expect(parseQuantity('1’234.5', mark)).toEqual({ value: 1234.5 });
      expect(parseQuantity('1,23.4', mark)).toEqual({ fault: 'not a number' });
      expect(parseQuantity('1.2.3', mark)).toEqual({ fault: 'not a number' });
    }
    expect(parseQuantity('1,234', '.')).toEqual({ fault: 'two readings' });
    expect(parseQuantity('1.234', ',')).toEqual({ fault: 'two readings' });
    expect(parseQuantity('1.234', '.')).toEqual({ value: 1.234 });
    expect(parseQuantity('1,234', ',')).toEqual({ value: 1.234 });
  });

  it.each(['', ' ', 'NA', 'n/a', '-', '–', '?', 'nm', 'Not measured', 'unknown'])('takes “%s” for missing', (text) => {
    expect(parseQuantity(text, '.')).toEqual({ missing: true });
  });

  it.each([
    '5O',
    'fifty',
    '~52',
    '50-52',
    '52/51',
    '50 or 52',
    '52?',
    '1/0',
    '3 5/4',
    "52°30'",
    '<5',
    '1e999',
    '--5',
    '∞',
    'Infinity',
  ])('makes no number of “%s”', (text) => {
    expect(parseQuantity(text, '.')).toHaveProperty('fault');
  });

  it('says so where only the unit is not understood', () => {
    expect(parseQuantity('52 cubits', '.')).toEqual({ fault: 'unknown unit' });
    expect(parseQuantity('52 °C', '.')).toEqual({ fault: 'not a number' });
  });

  it('answers for any text, and never with an infinity', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(...'0123456789.,/-+e °"\'½cmin') })),
        (text) => {
          const quantity = parseQuantity(text, '.');
          if ('value' in quantity) expect(Number.isFinite(quantity.value)).toBe(true);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

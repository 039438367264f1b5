// The toe of a foal by month, a published polynomial (see foal-toe-curve in hoof-published.csv).
import { describe, expect, it } from 'vitest';
import { FootSheet } from '../../lib/hoof/footSheet.ts';
import { numbers } from '../hoof/feet.ts';
import { published } from './published.ts';

const months = [1, 2, 3, 4];

describe('a polynomial as a typed column', () => {
  const sheet = FootSheet.from({ month: { values: Float64Array.from(months) } }).add({
    name: 'toe_length',
    formula:
      "quantity(4.8060987, 'cm') + quantity(0.2875192, 'cm') * month - quantity(0.0524012, 'cm') * (month - 3.74569) ** 2",
    unit: 'cm',
  });
  const curve = numbers(sheet, 'toe_length');

  it('gives the curve’s values', () => {
    expect(curve.map((value) => value.toFixed(3))).toEqual(['4.699', '5.221', '5.640', '5.953']);
  });

  it('lies by the observed means, nowhere further than a millimetre', () => {
    months.forEach((month, i) => {
      expect(Math.abs(curve[i] - published(`foal-toe-length-${month}`).value)).toBeLessThan(0.1);
    });
  });
});

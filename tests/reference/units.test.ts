// Published figures that are one quantity in two units.
import { describe, expect, it } from 'vitest';
import { inventHerd } from '../../data/inventHerd.ts';
import { herd } from '../../lib/hoof/herd.ts';
import { builtInRanges } from '../../lib/hoof/ranges.ts';
import { conversion, parseUnit } from '../../lib/sheet/dimension.ts';
import { columnsOf, numbers } from '../hoof/feet.ts';
import { published } from './published.ts';

const psi = conversion(parseUnit('[lb_av]/[in_i]2'), parseUnit('kg/cm2'));

describe('weight over the size of a foot', () => {
  it('78 pounds a square inch are the limit of 5.484 kg/cm²', () => {
    const [range] = builtInRanges.get('whole_load_kg_per_cm2')!;
    expect(published('turner-load').value * psi).toBeCloseTo(range.atMost!, 3);
    expect((published('afj-load-low').value * psi).toFixed(2)).toBe('4.22');
  });

  it('1100 pounds over 15 inches of hairline are 61.4 pounds a square inch', () => {
    const { feet } = herd({
      feet: {
        ...columnsOf([{ horse_id: 'one', date: '2026-01-05', limb: 'LF' }]),
        coronet_circumference_mm: { unit: '[in_i]', values: Float64Array.of(15) },
      },
      horses: { horse_id: { values: ['one'] }, weight_kg: { unit: '[lb_av]', values: Float64Array.of(1100) } },
    });
    // The published factor of 12.56 is 4π cut short.
    const found = numbers(feet, 'whole_load_kg_per_cm2')[0] / psi;
    expect(found.toFixed(1)).toBe('61.4');
    expect(found / ((1100 * 12.56) / 15 ** 2)).toBeCloseTo((4 * Math.PI) / 12.56, 9);
  });
});

describe('inches', () => {
  it('of the toe guideline are its centimetres', () => {
    const ids = ['360-400', '425-475', '525-575'];
    [3, 3.25, 3.5].forEach((inches, i) => {
      const cm = published(`turner-toe-length-${ids[i]}`).value;
      expect(Math.abs(inches * conversion(parseUnit('[in_i]'), parseUnit('cm')) - cm)).toBeLessThan(0.05);
    });
  });

  it('of growth a month are its millimetres', () => {
    const [low, middle, high] = ['min', 'mean', 'max'].map((which) => published(`lungwitz-growth-${which}`).value);
    for (const [inches, mm] of [
      [1 / 6, low],
      [1 / 3, middle],
      [1 / 2, high],
    ])
      expect(Math.abs(inches * 25.4 - mm)).toBeLessThan(0.005);
  });
});

it('the invented herds grow as grown horses are published to', () => {
  const [low, high] = ['low', 'high'].map((end) => published(`horsesport-growth-adult-${end}`).value);
  for (const { growthPerMonth } of inventHerd(3).truth.horses) {
    expect(growthPerMonth).toBeGreaterThanOrEqual(low);
    expect(growthPerMonth).toBeLessThanOrEqual(high);
  }
});

import { describe, expect, test } from 'vitest';
import { nearest } from '../../lib/sheet/nearest.ts';

describe('the name that was meant', () => {
  const names = ['toe_length_mm', 'toe_angle_deg', 'heel_angle_deg', 'date'];

  test.each([
    ['toe_lenght_mm', 'toe_length_mm'],
    ['toe_length', 'toe_length_mm'],
    ['Toe_Angle_Deg', 'toe_angle_deg'],
    ['dat', 'date'],
    ['heal_angle_deg', 'heel_angle_deg'],
  ])('%s is near to %s', (written, meant) => {
    expect(nearest(written, names)).toBe(meant);
  });

  test.each(['farrier', 'x', '', '__proto__', 'a'.repeat(10_000)])('%s is near to none', (written) => {
    expect(nearest(written.slice(0, 10_000), names)).toBeUndefined();
  });

  test('of two that are equally near the first is meant', () => {
    expect(nearest('toe_1', ['toe_2', 'toe_3'])).toBe('toe_2');
    expect(nearest('toe_1', ['heel_1', 'toe_22', 'toe_3'])).toBe('toe_3');
  });

  test('two letters that changed places are one slip, and others two', () => {
    for (const swapped of ['bac', 'acb']) expect(nearest('abc', [swapped])).toBe(swapped);
    for (const other of ['axb', 'acx', 'cba', 'bca']) expect(nearest('abc', [other]), other).toBeUndefined();
    expect(nearest('heel_angel', ['heel_angle', 'heel_anger'])).toBe('heel_angle');
  });

  test('a third of the letters may differ and no more', () => {
    expect(nearest('abcdef', ['abcdxy'])).toBe('abcdxy');
    expect(nearest('abcdef', ['abcxyz'])).toBeUndefined();
  });

  test('names of more than 64 letters are not compared', () => {
    const [long, longer] = ['a'.repeat(64), 'a'.repeat(65)];
    expect(nearest(`b${long.slice(1)}`, [long])).toBe(long);
    expect(nearest(longer, [long])).toBeUndefined();
    expect(nearest(long, [longer])).toBeUndefined();
  });

  test('nothing is near among nothing', () => {
    expect(nearest('date', [])).toBeUndefined();
  });
});

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

  test('nothing is near among nothing', () => {
    expect(nearest('date', [])).toBeUndefined();
  });
});

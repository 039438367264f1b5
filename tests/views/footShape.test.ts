import { describe, expect, it } from 'vitest';
import { measured } from '../../lib/hoof/measured.ts';
import { plainTable } from '../../lib/sheet/plainTable.ts';
import { footShape, shapeColumns } from '../../lib/views/footShape.ts';

describe('footShape', () => {
  const feet = plainTable({
    limb: { values: ['LF', '', 'XX'] },
    toe_angle_deg: { unit: 'deg', values: Float64Array.of(52, 50, 50) },
    foot_width_mm: { unit: 'mm', values: Float64Array.of(Number.NaN, 130, 130) },
    frog_width_mm: { values: ['text', '', ''] },
  });

  it('reads the numbers of one row, NaN where the cell is empty, the column lacking or not a number', () => {
    const foot = footShape(feet, 0);
    expect(foot).toMatchObject({
      limb: 'LF',
      toeAngle: 52,
      width: Number.NaN,
      length: Number.NaN,
      frogWidth: Number.NaN,
    });
  });

  it('gives nothing for a row without a limb', () => {
    expect(footShape(feet, 1)).toBeUndefined();
    expect(footShape(feet, 2)).toBeUndefined();
  });

  it('reads only columns that are measured', () => {
    const known = new Map(measured.map((row) => [row.name, row.unit]));
    for (const [part, name] of Object.entries(shapeColumns))
      expect(known.get(name), name).toBe(part.endsWith('Angle') ? 'deg' : 'mm');
  });
});

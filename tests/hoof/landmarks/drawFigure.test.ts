import { describe, expect, it } from 'vitest';
import type { Matrix } from '../../../lib/geometry/matrix.ts';
import { drawFigure, drawGround } from '../../../lib/hoof/landmarks/drawFigure.ts';

/** Ten pixels a mm, down the picture where up the foot, and shifted. */
const toPicture: Matrix = [
  [10, 0, 500],
  [0, -10, 300],
  [0, 0, 1],
];

describe('a figure in the picture', () => {
  it('is drawn where each of its points is seen', () => {
    expect(drawFigure({ kind: 'length', from: [0, 0], to: [3, 4] }, toPicture, 'toe_length_mm', '5 mm')).toEqual({
      ...{ kind: 'length', of: 'toe_length_mm', label: '5 mm' },
      ...{ from: [500, 300], to: [530, 260] },
    });
    expect(
      drawFigure({ kind: 'angle', corner: [0, 0], from: [1, 0], to: [0, 1] }, toPicture, 'toe_angle_deg', '90°'),
    ).toEqual({
      ...{ kind: 'angle', of: 'toe_angle_deg', label: '90°' },
      ...{ corner: [500, 300], from: [510, 300], to: [500, 290] },
    });
    const points = [
      [0, 0],
      [2, 0],
      [2, 1],
    ] as const;
    expect(drawFigure({ kind: 'outline', points, value: 1 }, toPicture, 'outline_area_mm2', '1 mm²')).toEqual({
      ...{ kind: 'outline', of: 'outline_area_mm2', label: '1 mm²' },
      points: [
        [500, 300],
        [520, 300],
        [520, 290],
      ],
    });
  });

  it('has its ground a tenth of the foot longer than the foot at both ends', () => {
    const ground = { point: [7, 1], direction: [0.6, 0.8] } as const;
    // Along the ground from its point: −5, 15 and, from off it, 10.
    const foot = [
      [4, -3],
      [16, 13],
      [7 + 6 - 8, 1 + 8 + 6],
    ] as const;
    const mark = drawGround(ground, foot, toPicture) as unknown as Record<'from' | 'to', readonly number[]>;
    expect(mark).toMatchObject({ kind: 'line', of: 'ground' });
    const at = (along: number) => [10 * (7 + 0.6 * along) + 500, -10 * (1 + 0.8 * along) + 300];
    for (const [end, along] of [
      ['from', -7],
      ['to', 17],
    ] as const)
      mark[end].forEach((value, c) => {
        expect(value).toBeCloseTo(at(along)[c], 9);
      });
  });
});

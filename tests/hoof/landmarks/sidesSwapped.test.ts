import { describe, expect, it } from 'vitest';
import type { Point } from '../../../lib/geometry/points.ts';
import { located } from '../../../lib/hoof/landmarks/located.ts';
import { sidesSwapped } from '../../../lib/hoof/landmarks/sidesSwapped.ts';
import { limbs, sideOf } from '../../../lib/hoof/limbs.ts';

const at = (points: Readonly<Record<string, Point>>) => located(Object.keys(points), Object.values(points));

describe('swapped sides', () => {
  it('are told by where the inside points lie from the outside ones, in every limb', () => {
    for (const limb of limbs) {
      const inside = sideOf(limb) === 'left' ? -40 : 40;
      const front = at({ medial_ground: [inside, 0], lateral_ground: [-inside, 3] });
      expect(sidesSwapped('front', front, limb), limb).toBe(false);
      const mirrored = at({ medial_ground: [-inside, 0], lateral_ground: [inside, 3] });
      expect(sidesSwapped('front', mirrored, limb), limb).toBe(true);
      const rear = at({ medial_heel_ground: [-inside, 0], lateral_heel_ground: [inside, 0] });
      expect(sidesSwapped('rear', rear, limb), limb).toBe(false);
    }
  });

  it('are told from below whichever way the toe lies in the picture, by the heels or by the frog', () => {
    for (const degrees of [0, 30, 100, 180, 250, 320]) {
      const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const turned = (x: number, y: number): Point => [500 + cos * x - sin * y, 900 + sin * x + cos * y];
      const foot = at({ medial_heel: turned(-40, 0), lateral_heel: turned(40, 5), toe: turned(2, 100) });
      const frog = at({ medial_frog: turned(-25, 0), lateral_frog: turned(25, 5), frog_tip: turned(1, 80) });
      for (const points of [foot, frog]) {
        expect(sidesSwapped('below', points, 'LF'), `turned by ${degrees}`).toBe(false);
        expect(sidesSwapped('below', points, 'RF'), `turned by ${degrees}`).toBe(true);
      }
    }
  });

  it('can’t be told from the side, from one side’s points alone, or from below without a toe', () => {
    expect(sidesSwapped('side', at({ toe_ground: [0, 0], heel_ground: [90, 0] }), 'LF')).toBe(false);
    expect(sidesSwapped('front', at({ medial_ground: [40, 0], medial_hairline: [35, 60] }), 'LF')).toBe(false);
    expect(sidesSwapped('below', at({ medial_heel: [40, 0], lateral_heel: [-40, 0] }), 'LF')).toBe(false);
  });
});

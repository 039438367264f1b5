import { describe, expect, it } from 'vitest';
import type { Place } from '../../../lib/geometry/pinhole.ts';
import { parametricHoof, plainHoof } from '../../../lib/hoof/landmarks/parametricHoof.ts';
import { landmarkViews } from '../../../lib/hoof/landmarks/views.ts';
import { limbs, sideOf } from '../../../lib/hoof/limbs.ts';
import { measured } from '../../../lib/hoof/measured.ts';

const degrees = (up: number, back: number) => (Math.atan2(up, back) * 180) / Math.PI;

describe('an invented foot', () => {
  it('measures from landmark to landmark what it was made to measure', () => {
    for (const limb of limbs) {
      const hoof = parametricHoof(limb, { toe_angle_deg: 49, heel_length_mm: 44, medial_wall_mm: 51 });
      const at = (view: 'side' | 'front' | 'rear' | 'below', code: string): Place => hoof.landmarks(view).get(code)![0];
      const { truth } = hoof;
      const toe = at('side', 'toe_hairline');
      expect(degrees(toe[1], -toe[2])).toBeCloseTo(49, 9);
      expect(Math.hypot(toe[1], toe[2])).toBeCloseTo(truth.toe_length_mm, 9);
      const [heel, heelTop] = [at('side', 'heel_ground'), at('side', 'heel_hairline')];
      expect(Math.hypot(heelTop[1], heelTop[2] - heel[2])).toBeCloseTo(44, 9);
      expect(degrees(heelTop[1], heel[2] - heelTop[2])).toBeCloseTo(truth.heel_angle_deg, 9);
      const pastern = hoof.landmarks('side').get('pastern_front')!;
      for (const place of pastern)
        expect(degrees(place[1] - toe[1], toe[2] - place[2])).toBeCloseTo(truth.pastern_angle_deg, 9);
      expect(Math.hypot(pastern[1][1] - toe[1], pastern[1][2] - toe[2])).toBeCloseTo(40, 9);
      expect(at('front', 'medial_hairline')[1]).toBeCloseTo(51, 9);
      const [foot, top] = [at('front', 'lateral_ground'), at('front', 'lateral_hairline')];
      expect(degrees(top[1], Math.abs(foot[0]) - Math.abs(top[0]))).toBeCloseTo(truth.lateral_wall_angle_deg, 9);
      expect(at('rear', 'lateral_heel_hairline')[1]).toBeCloseTo(truth.lateral_heel_mm, 9);
      expect(Math.abs(at('below', 'medial_widest')[0] - at('below', 'lateral_widest')[0])).toBeCloseTo(126, 9);
      expect(at('below', 'frog_tip')[2] - at('below', 'medial_frog')[2]).toBeCloseTo(truth.frog_length_mm, 9);
    }
  });
  it('has its outside away from the other foot of the pair', () => {
    for (const limb of limbs) {
      const outward = parametricHoof(limb).landmarks('front').get('lateral_ground')![0][0];
      expect(Math.sign(outward), limb).toBe(sideOf(limb) === 'left' ? 1 : -1);
    }
  });
  it('has every landmark of every view but those of the shoulder, which no picture of a foot holds', () => {
    const hoof = parametricHoof('RF');
    for (const { view, landmarks } of landmarkViews)
      for (const { code, least } of landmarks.filter((landmark) => !landmark.frontOnly))
        expect(hoof.landmarks(view).get(code)?.length, code).toBeGreaterThanOrEqual(least);
  });
  it('lies within what a foot can be', () => {
    for (const [name, value] of Object.entries(plainHoof)) {
      const [from, to] = measured.find((column) => column.name === name)!.anatomy;
      expect(value, name).toBeGreaterThan(from);
      expect(value, name).toBeLessThan(to);
    }
  });
  it('stands on the ground and nowhere under it', () => {
    const heights = parametricHoof('LH').faces.flatMap(({ corners }) => corners.map(([, y]) => y));
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(-1e-9);
  });
});

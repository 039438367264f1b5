import type { Limb } from '../limbs.ts';
import { hoofEdges } from './hoofEdges.ts';
import { hoofFaces } from './hoofFaces.ts';
import { hoofLandmarks } from './hoofLandmarks.ts';
import type { HoofSize, ParametricHoof } from './hoofModel.ts';

/** An invented foot of ordinary size. */
export const plainHoof: HoofSize = {
  toe_angle_deg: 52,
  toe_length_mm: 82,
  heel_angle_deg: 47,
  heel_length_mm: 39,
  pastern_angle_deg: 54,
  medial_wall_mm: 48,
  lateral_wall_mm: 45,
  medial_wall_angle_deg: 79,
  lateral_wall_angle_deg: 74,
  medial_heel_mm: 31,
  foot_width_mm: 126,
  foot_length_mm: 128,
  heel_width_mm: 84,
  frog_width_mm: 50,
  frog_length_mm: 82,
};

/**
 * An invented foot, the source of truth for tests and pictures.
 * @param size what it should measure, where it differs from `plainHoof`
 * @example parametricHoof('LF', { toe_angle_deg: 50 }).truth.toe_angle_deg // 50
 */
export function parametricHoof(limb: Limb, size: Partial<HoofSize> = {}): ParametricHoof {
  const whole: HoofSize = { ...plainHoof, ...size };
  const edges = hoofEdges(limb, whole);
  const { truth, landmarks } = hoofLandmarks(limb, whole, edges);
  return { limb, size: whole, edges, truth, landmarks, faces: hoofFaces(limb, whole, edges) };
}

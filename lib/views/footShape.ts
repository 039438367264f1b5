import { isLimb, type Limb } from '../hoof/limbs.ts';
import type { Table } from '../sheet/table.ts';

/** One foot's own numbers, as the drawings need them: mm and degrees; `NaN` or left out is not measured. */
export interface FootShape {
  readonly limb: Limb;
  readonly toeAngle?: number;
  readonly heelAngle?: number;
  readonly pasternAngle?: number;
  readonly toeLength?: number;
  readonly heelLength?: number;
  /** Upright from the ground to the hairline, inside and outside: seen from the front, and at the heels from behind. */
  readonly medialWall?: number;
  readonly lateralWall?: number;
  readonly medialWallAngle?: number;
  readonly lateralWallAngle?: number;
  readonly medialHeel?: number;
  readonly lateralHeel?: number;
  readonly width?: number;
  readonly length?: number;
  readonly frogWidth?: number;
  readonly frogLength?: number;
  readonly heelWidth?: number;
}

/** Which measured column each number of a foot comes from. */
export const shapeColumns = {
  toeAngle: 'toe_angle_deg',
  heelAngle: 'heel_angle_deg',
  pasternAngle: 'pastern_angle_deg',
  toeLength: 'toe_length_mm',
  heelLength: 'heel_length_mm',
  medialWall: 'medial_wall_mm',
  lateralWall: 'lateral_wall_mm',
  medialWallAngle: 'medial_wall_angle_deg',
  lateralWallAngle: 'lateral_wall_angle_deg',
  medialHeel: 'medial_heel_mm',
  lateralHeel: 'lateral_heel_mm',
  width: 'foot_width_mm',
  length: 'foot_length_mm',
  frogWidth: 'frog_width_mm',
  frogLength: 'frog_length_mm',
  heelWidth: 'heel_width_mm',
} as const satisfies Readonly<Record<Exclude<keyof FootShape, 'limb'>, string>>;

/** What of a table a view reads; every sheet and table has it. */
export type Readable = Pick<Table, 'rows' | 'names' | 'column'>;

/**
 * The numbers of one row of the feet, ready to draw.
 * @param feet  a table with a text column `limb`; measured columns that it lacks count as not measured
 * @param row   0 to rows - 1
 * @returns mm and degrees, `NaN` where the cell is empty; `undefined` where the row names no limb
 * @example footShape(feet, 0)?.toeAngle // 52
 */
export function footShape(feet: Readable, row: number): FootShape | undefined {
  const limb = feet.column('limb').values[row];
  if (typeof limb !== 'string' || !isLimb(limb)) return undefined;
  const shape: Record<string, number> = {};
  for (const [part, name] of Object.entries(shapeColumns)) {
    const value = feet.names.includes(name) ? feet.column(name).values[row] : Number.NaN;
    shape[part] = typeof value === 'number' ? value : Number.NaN;
  }
  return { ...shape, limb };
}

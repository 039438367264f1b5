import type { Place } from '../../geometry/pinhole.ts';
import type { Limb } from '../limbs.ts';
import type { PictureView } from './placedPoint.ts';

/** What an invented foot measures: the columns of the same names. The outside heel height follows from the heel's length. */
export interface HoofSize {
  readonly toe_angle_deg: number;
  readonly toe_length_mm: number;
  readonly heel_angle_deg: number;
  readonly heel_length_mm: number;
  readonly pastern_angle_deg: number;
  readonly medial_wall_mm: number;
  readonly lateral_wall_mm: number;
  readonly medial_wall_angle_deg: number;
  readonly lateral_wall_angle_deg: number;
  readonly medial_heel_mm: number;
  readonly foot_width_mm: number;
  readonly foot_length_mm: number;
  readonly heel_width_mm: number;
  readonly frog_width_mm: number;
  readonly frog_length_mm: number;
}

/** What a piece of the surface is made of. */
export type Tissue = 'horn' | 'skin' | 'hair' | 'sole' | 'wall' | 'bar' | 'frog' | 'furrow';

/** A flat piece of the surface. */
export interface Face {
  readonly tissue: Tissue;
  readonly corners: readonly Place[];
}

/** The edges of the horn: where it stands on the ground, and its hairline. */
export interface HoofEdges {
  /** From mid-toe (0) by the widest part (1) to the heel buttress (2), on the medial or the lateral side. */
  bearing(t: number, side: 'medial' | 'lateral'): Place;
  hairline(t: number, side: 'medial' | 'lateral'): Place;
}

/**
 * A foot made of numbers: a truncated oblique cone with heels, bars and a frog, on a pastern. In mm; x to the horse's
 * left, y up, z forward; mid-toe stands at the origin and the heels behind it.
 */
export interface ParametricHoof {
  readonly limb: Limb;
  readonly size: HoofSize;
  readonly edges: HoofEdges;
  /** The measures' true values, by name: what was put in, and what follows from it. */
  readonly truth: Readonly<Record<string, number>>;
  /** Where each landmark of a view truly lies; in order where it is many. */
  landmarks(view: PictureView): ReadonlyMap<string, readonly Place[]>;
  readonly faces: readonly Face[];
}

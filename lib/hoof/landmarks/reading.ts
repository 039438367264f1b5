import type { Limb } from '../limbs.ts';
import type { Figure } from './figure.ts';
import type { Located } from './located.ts';
import type { PictureView } from './placedPoint.ts';

/** How a measure is read off the points of one view. */
export interface Reading {
  /** A measured column's name, or one of its own where no column holds it. */
  readonly name: string;
  readonly title: string;
  readonly unit: 'mm' | 'deg' | 'mm2' | '1';
  readonly view: PictureView;
  /** In the plane of the foot, y up; a part is NaN where a point that it needs is missing. */
  readonly figure: (at: Located, limb: Limb) => Figure;
  /** The difference that it should show, in its unit: with a larger standard error it is refused. */
  readonly shows: { readonly value: number; readonly source: string };
  /** Front feet only. */
  readonly frontOnly?: boolean;
  /** Whether it would be another measure if inside and outside changed places. */
  readonly sided?: boolean;
}

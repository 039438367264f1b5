import type { Point } from '../../geometry/points.ts';
import { angleAt } from '../../geometry/signedAngle.ts';

/** What a measure is in the plane of the foot: its value follows from it, and so does its drawing. */
export type Figure =
  | { readonly kind: 'length'; readonly from: Point; readonly to: Point }
  | { readonly kind: 'angle'; readonly corner: Point; readonly from: Point; readonly to: Point }
  | { readonly kind: 'outline'; readonly points: readonly Point[]; readonly value: number };

/** The figure's value in mm, in degrees from 0 to 180, or what its outline says; NaN where a point is missing. */
export function figureValue(figure: Figure): number {
  if (figure.kind === 'outline') return figure.value;
  const { from, to } = figure;
  return figure.kind === 'length' ? Math.hypot(to[0] - from[0], to[1] - from[1]) : angleAt(from, figure.corner, to);
}

import { enoughRepeats, withinSd } from '../errors.ts';
import type { PlacedPoint } from './placedPoint.ts';
import { landmarkViews, scaleLandmarks } from './views.ts';

/** How closely a person places points. */
export interface PlacingError {
  /** One standard deviation in each direction, in pixels; NaN where no point was placed twice. */
  readonly value_px: number;
  /** How much it is worth: coordinates placed again. */
  readonly degrees: number;
  /** Whether it is worth enough to be used instead of the default. */
  readonly enough: boolean;
}

const single: ReadonlySet<string> = new Set(
  [...landmarkViews.flatMap(({ landmarks }) => landmarks), ...Object.values(scaleLandmarks).flat()]
    .filter(({ many }) => !many)
    .map(({ code }) => code),
);

/**
 * How closely points are placed, from a person's own repeats on the same pictures.
 * @param rounds each time that the points were placed, as rows; a point that may be many doesn't count, as none of them
 *   is bound to lie where it lay before
 * @source Bland & Altman 1996, BMJ 312:1654, for the within-subject standard deviation
 */
export function placingError(rounds: readonly (readonly PlacedPoint[])[]): PlacingError {
  const groups = new Map<string, number>();
  const codes: number[] = [];
  const values: number[] = [];
  for (const { photo, view, point, x_px, y_px } of rounds.flat()) {
    if (!single.has(point)) continue;
    for (const [axis, value] of [x_px, y_px].entries()) {
      const key = JSON.stringify([photo, view, point, axis]);
      const code = groups.get(key) ?? groups.size;
      groups.set(key, code);
      codes.push(code);
      values.push(value);
    }
  }
  const { sd, degrees } = withinSd(Float64Array.from(values), { codes: Int32Array.from(codes), count: groups.size });
  return { value_px: sd, degrees, enough: degrees >= enoughRepeats };
}

import type { Points } from './points.ts';
import { polygonMoments } from './polygonMoments.ts';

/** ∫(x − x̄)² over the area, ∫(y − ȳ)², and ∫(x − x̄)(y − ȳ), in the fourth power of the unit. */
export interface SecondMoments {
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/**
 * How the area inside an outline is spread about its centre of gravity.
 * @param points the corners in order, either way round, in any one length unit; a missing one is left out
 * @returns the three moments, `xx` and `yy` positive; NaN where the outline has no area
 * @example secondMoments([0, 0, 3, 0, 3, 2, 0, 2]) // { xx: 4.5, yy: 2, xy: 0 }
 */
export function secondMoments(points: Points): SecondMoments {
  const { area, x, y, xx, yy, xy } = polygonMoments(points);
  if (area === 0) return { xx: NaN, yy: NaN, xy: NaN };
  const sign = Math.sign(area);
  return {
    xx: sign * (xx - (x * x) / area),
    yy: sign * (yy - (y * y) / area),
    xy: sign * (xy - (x * y) / area),
  };
}

import { about, type Point, type Points, presentPoints } from './points.ts';

/** Integrals over a polygon, about its first corner so that a far-off origin takes no digits. */
export interface PolygonMoments {
  readonly corners: readonly Point[];
  readonly origin: Point;
  /** Positive counter-clockwise with y up. */
  readonly area: number;
  /** ∫x and ∫y over the area, then ∫x², ∫y² and ∫xy, with the sign of the area. */
  readonly x: number;
  readonly y: number;
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
}

/**
 * The area of a polygon and its first and second moments, from its corners alone.
 * @source Green's theorem; Steger 1996, On the calculation of arbitrary moments of polygons, FGBV-96-05
 */
export function polygonMoments(points: Points): PolygonMoments {
  const corners = presentPoints(points).points;
  const origin = corners.length > 0 ? corners[0] : ([NaN, NaN] as const);
  const away = about(origin, corners);
  let [area, x, y, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
  away.forEach(([x0, y0], i) => {
    const [x1, y1] = away[(i + 1) % away.length];
    const cross = x0 * y1 - x1 * y0;
    area += cross / 2;
    x += ((x0 + x1) * cross) / 6;
    y += ((y0 + y1) * cross) / 6;
    xx += ((x0 * x0 + x0 * x1 + x1 * x1) * cross) / 12;
    yy += ((y0 * y0 + y0 * y1 + y1 * y1) * cross) / 12;
    xy += ((x0 * y1 + 2 * x0 * y0 + 2 * x1 * y1 + x1 * y0) * cross) / 24;
  });
  return { corners, origin, area, x, y, xx, yy, xy };
}

import type { Point } from './points.ts';

/**
 * The point of an ellipse nearest to a point, both seen from its centre and along its axes.
 * @param point in any one length unit
 * @param a the semi-axis along x, above 0
 * @param b the semi-axis along y, above 0
 * @returns the nearest point; from the middle of the longer axis there are two, and the one with positive y is given
 * @source Eberly 2013, Distance from a Point to an Ellipse, an Ellipsoid, or a Hyperellipsoid, geometrictools.com
 * @example nearestOnEllipse([9, 0], 5, 3) // [5, 0]
 */
export function nearestOnEllipse([x, y]: Point, a: number, b: number): Point {
  if (a < b) {
    const [v, u] = nearestOnEllipse([y, x], b, a);
    return [u, v];
  }
  const [u, v] = inQuadrant(Math.abs(x), Math.abs(y), a, b);
  return [x < 0 ? -u : u, y < 0 ? -v : v];
}

/** For x, y ≥ 0 and a ≥ b. */
function inQuadrant(x: number, y: number, a: number, b: number): Point {
  if (y > 0) {
    if (x === 0) return [0, b];
    const t = rootOf(x, y, a, b);
    return [(a * a * x) / (t + a * a), (b * b * y) / (t + b * b)];
  }
  const [top, bottom] = [a * x, a * a - b * b];
  if (top >= bottom) return [a, 0];
  const share = top / bottom;
  return [a * share, b * Math.sqrt(1 - share * share)];
}

/** The one t above −b² where (ax / (t + a²))² + (by / (t + b²))² falls to 1, by Newton steps between bounds. */
function rootOf(x: number, y: number, a: number, b: number): number {
  let low = -b * b + b * y;
  let high = -b * b + Math.hypot(a * x, b * y);
  let t = low;
  for (let turn = 0; turn < 200; turn++) {
    const p = (a * x) / (t + a * a);
    const q = (b * y) / (t + b * b);
    const excess = p * p + q * q - 1;
    if (excess === 0) return t;
    if (excess > 0) low = t;
    else high = t;
    let next = t + excess / (2 * ((p * p) / (t + a * a) + (q * q) / (t + b * b)));
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === t || high - low <= Number.EPSILON * b * b) return next;
    t = next;
  }
  return t;
}

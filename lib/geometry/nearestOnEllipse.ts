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
  const gap = a * a - b * b;
  if (y > 0) {
    const s = rootOf(x, y, a, b, gap);
    return [(a * a * x) / (s + gap), (b * b * y) / s];
  }
  const top = a * x;
  if (top >= gap) return [a, 0];
  const share = top / gap;
  return [a * share, b * Math.sqrt(1 - share * share)];
}

/**
 * The one s above 0 where (ax / (s + a² − b²))² + (by / s)² falls to 1. It falls ever less steeply, so that Newton steps
 * from below never go beyond.
 */
function rootOf(x: number, y: number, a: number, b: number, gap: number): number {
  let s = b * y;
  for (;;) {
    const p = (a * x) / (s + gap);
    const q = (b * y) / s;
    const next = s + (p * p + q * q - 1) / (2 * ((p * p) / (s + gap) + (q * q) / s));
    if (!(next > s)) return s;
    s = next;
  }
}

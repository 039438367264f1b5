import type { Pen, Point } from './pen.ts';

/** A cubic curve onward from where the one before it ended: two control points and its end. */
export type Curve = readonly [Point, Point, Point];

/** The right half of a shape that is the same on both sides, from its top on the middle line downwards. */
export interface Half {
  readonly top: Point;
  readonly curves: readonly Curve[];
}

/**
 * Path data of the whole shape: down the right half, across, and up the mirrored left half.
 * @param draw  the pen, in mm with the middle line at x = 0
 */
export function closed(draw: Pen, half: Half): string {
  const ends = [half.top, ...half.curves.map((curve) => curve[2])];
  let data = draw.path`M${half.top}`;
  for (const [first, second, end] of half.curves) data += draw.path`C${first} ${second} ${end}`;
  data += draw.path`L${mirrored(ends[ends.length - 1])}`;
  for (let at = half.curves.length - 1; at >= 0; at--) {
    const [first, second] = half.curves[at];
    data += draw.path`C${mirrored(second)} ${mirrored(first)} ${mirrored(ends[at])}`;
  }
  return `${data}Z`;
}

/** Path data of some of the shape's curves on both sides, open: `from` and `to` as `Array.prototype.slice` reads them. */
export function open(draw: Pen, half: Half, from: number, to?: number): string {
  const start = from === 0 ? half.top : half.curves[from - 1][2];
  let data = '';
  for (const side of [(point: Point) => point, mirrored]) {
    data += draw.path`M${side(start)}`;
    for (const curve of half.curves.slice(from, to))
      data += draw.path`C${side(curve[0])} ${side(curve[1])} ${side(curve[2])}`;
  }
  return data;
}

function mirrored([x, y]: Point): Point {
  return [-x, y];
}

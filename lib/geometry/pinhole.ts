import { degree } from './degrees.ts';
import { type Matrix, rows } from './matrix.ts';
import type { Point } from './points.ts';

/** A place in space: x to the right, y up, z towards the viewer, all in one length unit. */
export type Place = readonly [x: number, y: number, z: number];

export interface PinholeOptions {
  /** Where the camera stands, and the place in the middle of its picture. */
  readonly position: Place;
  readonly lookAt: Place;
  /** How far the camera is rolled about its line of sight, in degrees, counter-clockwise as the photographer sees it. */
  readonly roll?: number;
  /** What is up in the picture; the y axis where not given. For a look straight down give another. */
  readonly up?: Place;
  /** The focal length in pixels. */
  readonly focal: number;
  /** The picture's middle in pixels from its upper left corner. */
  readonly centre: Point;
}

export interface Pinhole {
  /** Where a place falls in the picture, in pixels right and down; NaN behind the camera. */
  project(place: Place): Point;
  /** The map of a plane, given by a place and the directions of its x and y axes, to the picture. */
  planeMatrix(origin: Place, x: Place, y: Place): Matrix;
}

/**
 * A camera without lens: straight lines stay straight, and what is twice as far is half as large.
 * @throws TypeError where the camera stands at the place it looks at, or looks along its own `up`
 * @source Hartley & Zisserman 2004, Multiple View Geometry in Computer Vision, 2nd edition, 6.1
 * @example pinhole({ position: [0, 0, 10], lookAt: [0, 0, 0], focal: 1000, centre: [500, 400] }).project([1, 2, 0])
 *   // [600, 200]
 */
export function pinhole({ position, lookAt, roll = 0, up = [0, 1, 0], focal, centre }: PinholeOptions): Pinhole {
  const forward = unit(minus(lookAt, position), 'A camera needs some distance to the place it looks at');
  const level = unit(cross(forward, up), 'A camera that looks along its own up direction needs another `up`');
  const upright = cross(level, forward);
  const [cos, sin] = [Math.cos(roll * degree), Math.sin(roll * degree)];
  const right = blend(level, cos, upright, sin);
  const above = blend(upright, cos, level, -sin);
  /** Pixels right and down times depth, and depth, of a direction. */
  const image = (v: Place): Place => {
    const depth = dot(v, forward);
    return [centre[0] * depth + focal * dot(v, right), centre[1] * depth - focal * dot(v, above), depth];
  };
  return {
    project(place) {
      const [u, v, depth] = image(minus(place, position));
      return depth > 0 ? [u / depth, v / depth] : [NaN, NaN];
    },
    planeMatrix(origin, x, y) {
      const columns = [image(x), image(y), image(minus(origin, position))];
      return rows((r, c) => columns[c][r]);
    },
  };
}

function minus(a: Place, b: Place): Place {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function dot(a: Place, b: Place): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Place, b: Place): Place {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function blend(a: Place, s: number, b: Place, t: number): Place {
  return [s * a[0] + t * b[0], s * a[1] + t * b[1], s * a[2] + t * b[2]];
}

function unit(v: Place, otherwise: string): Place {
  const length = Math.hypot(...v);
  if (!(length > 0)) throw new TypeError(otherwise);
  return [v[0] / length, v[1] / length, v[2] / length];
}

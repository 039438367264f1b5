import { degree, halfTurn } from './degrees.ts';
import type { Matrix } from './matrix.ts';
import type { Point } from './points.ts';

export interface Foreshortening {
  /** How many units of the picture one unit of the plane takes, where it is longest and where it is shortest. */
  readonly longest: number;
  readonly shortest: number;
  /** Shortest over longest, 1 where the picture is square on. */
  readonly ratio: number;
  /** How far off square the plane is seen, in degrees from 0 to 90, as for a distant camera. */
  readonly obliqueness: number;
  /** The direction in the plane that is shortened most, in degrees in [0, 180) from its x axis. */
  readonly direction: number;
}

/**
 * How a projective map shortens a plane at one point: what a plane-to-picture fit says about the camera without
 * knowing the camera.
 * @param matrix takes the plane to the picture
 * @param at the point of the plane that is asked about
 * @returns the two scales and the angle between the line of sight and the plane's normal
 * @source Hartley & Zisserman 2004, Multiple View Geometry in Computer Vision, 2nd edition, 2.4: the local affinity
 * @example foreshortening([[1, 0, 0], [0, 0.5, 0], [0, 0, 1]], [0, 0]).obliqueness // 60
 */
export function foreshortening(matrix: Matrix, [x, y]: Point): Foreshortening {
  const [first, second, third] = matrix;
  const depth = third[0] * x + third[1] * y + third[2];
  const u = (first[0] * x + first[1] * y + first[2]) / depth;
  const v = (second[0] * x + second[1] * y + second[2]) / depth;
  const [ux, uy] = [(first[0] - u * third[0]) / depth, (first[1] - u * third[1]) / depth];
  const [vx, vy] = [(second[0] - v * third[0]) / depth, (second[1] - v * third[1]) / depth];
  const alongX = ux * ux + vx * vx;
  const alongY = uy * uy + vy * vy;
  const mixed = ux * uy + vx * vy;
  const longest = Math.sqrt((alongX + alongY + Math.hypot(alongX - alongY, 2 * mixed)) / 2);
  const shortest = Math.abs(ux * vy - uy * vx) / longest;
  const ratio = Math.min(1, shortest / longest);
  return {
    longest,
    shortest,
    ratio,
    obliqueness: Math.acos(ratio) / degree,
    direction: halfTurn(Math.atan2(2 * mixed, alongX - alongY) / 2 / degree + 90),
  };
}

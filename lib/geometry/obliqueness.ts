import { degree } from './degrees.ts';

/** How a distant camera stands to the plane it should see square on, in degrees; 0 where not given. */
export interface Oblique {
  /** Turned about the upright: positive where the camera stands to the left and looks right. */
  readonly turned?: number;
  /** Raised: positive where it stands above and looks down. */
  readonly raised?: number;
}

/**
 * What an angle against the ground looks like from a distant camera that is not square to its plane. Turned alone,
 * tan a′ = tan a / cos turned; raised alone, tan a′ = tan a · cos raised.
 * @param angle the true angle in degrees, from 0 to 180, counter-clockwise from the ground to the right
 * @returns the angle in the picture between the line and the ground's own picture, in degrees
 * @source Parallel projection of a line and the ground
 * @example seenAngle(50, { turned: 20 }) // 51.74…
 */
export function seenAngle(angle: number, oblique: Oblique): number {
  const { rise, run, shear } = projection(oblique);
  const [sin, cos] = [Math.sin(angle * degree), Math.cos(angle * degree)];
  return Math.atan2(rise * sin, run * cos + shear * sin) / degree;
}

/**
 * The true angle behind one that is seen: the inverse of `seenAngle`.
 * @param seen the angle in the picture in degrees, from 0 to 180
 * @returns the true angle in degrees
 * @example trueAngle(51.74, { turned: 20 }) // 49.99…
 */
export function trueAngle(seen: number, oblique: Oblique): number {
  const { rise, run, shear } = projection(oblique);
  const [sin, cos] = [Math.sin(seen * degree), Math.cos(seen * degree)];
  return Math.atan2(run * sin, rise * cos - shear * sin) / degree;
}

/** The ground's picture is (cos t, sin t sin r) and the upright's (0, cos r): their products with themselves. */
function projection({ turned = 0, raised = 0 }: Oblique): { rise: number; run: number; shear: number } {
  const [cosT, sinT] = [Math.cos(turned * degree), Math.sin(turned * degree)];
  const [cosR, sinR] = [Math.cos(raised * degree), Math.sin(raised * degree)];
  return { rise: cosT * cosR, run: cosT * cosT + sinT * sinT * sinR * sinR, shear: sinT * sinR * cosR };
}

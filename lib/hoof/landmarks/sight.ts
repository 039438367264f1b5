import { degree } from '../../geometry/degrees.ts';
import { foreshortening } from '../../geometry/foreshortening.ts';
import type { Matrix } from '../../geometry/matrix.ts';
import { planePose } from '../../geometry/planePose.ts';
import type { Point } from '../../geometry/points.ts';
import type { PictureOptions } from './pictureMeasures.ts';

/** A metre: where the picture doesn't say how far the lens was. Common practice, no source. */
export const defaultDistance_mm = 1000;

/** How the foot was looked at. */
export interface Sight {
  /** Along the plane from the camera's own foot point to the foot, over the distance: its tangents of turn and tilt. */
  readonly slope: Point;
  /** From the lens to the plane, in mm. */
  readonly distance_mm: number;
}

/**
 * From where the camera looked at a place of the plane: from the plane's pose where the camera is known, else from how
 * the plane is shortened there; which end is the near one, its perspective tells.
 * @param toPicture from the plane, y up, to pixels
 * @param at the middle of the foot in the plane
 */
export function sightOf(toPicture: Matrix, at: Point, { camera, distance_mm }: PictureOptions): Sight {
  if (camera !== undefined) {
    const centre: Point = [camera.width_px / 2, camera.height_px / 2];
    const [x, y, away] = planePose(toPicture, camera.focal_px, centre).position;
    return { slope: [(at[0] - x) / away, (at[1] - y) / away], distance_mm: away };
  }
  const { ratio, direction } = foreshortening(toPicture, at);
  const [, , [h, k, l]] = toPicture;
  const way: Point = [Math.cos(direction * degree), Math.sin(direction * degree)];
  const depth = h * at[0] + k * at[1] + l;
  const away = Math.sign((h * way[0] + k * way[1]) / depth) || 1;
  const slope = Math.sqrt(1 / ratio ** 2 - 1) * away;
  return { slope: [slope * way[0], slope * way[1]], distance_mm: distance_mm ?? defaultDistance_mm };
}

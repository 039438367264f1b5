import { degree } from './degrees.ts';
import type { Matrix } from './matrix.ts';
import type { Place } from './pinhole.ts';
import type { Point } from './points.ts';

export interface PlanePose {
  /** Degrees the camera is turned about the plane's upright: positive where it stands to the left and looks right. */
  readonly turned: number;
  /** Degrees the camera looks down on the plane's normal: positive where it stands above. */
  readonly raised: number;
  /** Degrees it is rolled about its line of sight, counter-clockwise as the photographer sees it. */
  readonly rolled: number;
  /** Where the camera stands, in the plane's own coordinates and unit, z towards it. */
  readonly position: Place;
}

/**
 * Where a camera stood, from the map of a plane to its picture.
 * @param matrix takes the plane, y up, to pixels right and down, as `fitProjective` finds it from four known points
 * @param focal the camera's focal length in pixels
 * @param centre the picture's middle in pixels
 * @returns how far off square it looked; NaN where the map is none that a camera makes
 * @source Zhang 2000, IEEE Transactions on Pattern Analysis and Machine Intelligence 22:1330–1334, section 3.1
 */
export function planePose(matrix: Matrix, focal: number, centre: Point): PlanePose {
  // The plane's x and y axes and its origin as the camera sees them: to the right, up, and away from it.
  const [x, y, origin] = [0, 1, 2].map((c): Place => {
    const depth = matrix[2][c];
    return [(matrix[0][c] - centre[0] * depth) / focal, (centre[1] * depth - matrix[1][c]) / focal, depth];
  });
  const size = (Math.sign(origin[2]) * (Math.hypot(...x) + Math.hypot(...y))) / 2;
  const [ex, ey] = squared(x, y, size);
  // Right, up and away make a left-handed set, so the plane's normal towards the viewer is minus the product.
  const ez: Place = [ey[1] * ex[2] - ey[2] * ex[1], ey[2] * ex[0] - ey[0] * ex[2], ey[0] * ex[1] - ey[1] * ex[0]];
  const seen = (axis: Place) => -(axis[0] * origin[0] + axis[1] * origin[1] + axis[2] * origin[2]) / size;
  const turned = Math.atan2(ex[2], -ez[2]);
  const raised = Math.asin(Math.max(-1, Math.min(1, -ey[2])));
  const level = ex[0] * Math.cos(turned) + ez[0] * Math.sin(turned);
  const tilt =
    ex[0] * Math.sin(turned) * Math.sin(raised) +
    ey[0] * Math.cos(raised) -
    ez[0] * Math.cos(turned) * Math.sin(raised);
  return {
    turned: turned / degree,
    raised: raised / degree,
    rolled: Math.atan2(tilt, level) / degree,
    position: [seen(ex), seen(ey), seen(ez)],
  };
}

/** Two axes of length 1 at right angles, as near as can be to two that rounding or noise has skewed. */
function squared(x: Place, y: Place, size: number): [Place, Place] {
  const [a, b] = [x, y].map((axis) => axis.map((value) => value / size));
  const half = (a[0] * b[0] + a[1] * b[1] + a[2] * b[2]) / 2;
  const unit = (v: number[]): Place => {
    const length = Math.hypot(...v);
    return [v[0] / length, v[1] / length, v[2] / length];
  };
  const first = unit(a.map((value, i) => value - half * b[i]));
  const second = b.map((value, i) => value - half * a[i]);
  const skew = first[0] * second[0] + first[1] * second[1] + first[2] * second[2];
  return [first, unit(second.map((value, i) => value - skew * first[i]))];
}

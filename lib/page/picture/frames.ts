import type { Size } from './sight.ts';
import type { GroundFrame, Spot } from './work.ts';

export type Frame = GroundFrame;

/** A turn, size and shift: `[a, b, c, d, e, f]` takes (x, y) to (a·x + c·y + e, b·x + d·y + f). */
export type Map2 = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** Where level ground and true size are seen from: `scale` px to a mm, the anchor at (x, y). */
export interface LevelSight {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** Where a map takes a spot. */
export const through = ([a, b, c, d, e, f]: Map2, [x, y]: Spot): Spot => [a * x + c * y + e, b * x + d * y + f];

/** From a picture's px to a room in which its ground is level and its size true. */
export function frameMap({ anchor, turned, pxPerMm }: Frame, { scale, x, y }: LevelSight): Map2 {
  const size = scale / pxPerMm;
  const angle = (-turned * Math.PI) / 180;
  const [cos, sin] = [size * Math.cos(angle), size * Math.sin(angle)];
  return [cos, sin, -sin, cos, x - cos * anchor[0] + sin * anchor[1], y - sin * anchor[0] - cos * anchor[1]];
}

/** How much room is left round the feet, of their size. */
const MARGIN = 0.3;

/** The sight that shows the points of all pictures at once, with some room round them. */
export function sightOf(
  layers: readonly { readonly frame: Frame; readonly spots: readonly Spot[] }[],
  room: Size,
): LevelSight {
  const spots = layers.flatMap(({ frame, spots }) => {
    const map = frameMap(frame, { scale: 1, x: 0, y: 0 });
    return spots.map((spot) => through(map, spot));
  });
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const wide = Math.max(right - left, 1) * (1 + 2 * MARGIN);
  const high = Math.max(bottom - top, 1) * (1 + 2 * MARGIN);
  const scale = Math.min(room.width / wide, room.height / high);
  return {
    scale,
    x: room.width / 2 - (scale * (left + right)) / 2,
    y: room.height / 2 - (scale * (top + bottom)) / 2,
  };
}

import { type Sight, type Size, wholeSight } from './sight.ts';
import type { FlatMap, Spot } from './work.ts';

/** Where a map takes a spot. */
export const through = ([a, b, c, d, e, f]: FlatMap, [x, y]: Spot): Spot => [a * x + c * y + e, b * x + d * y + f];

/** What is there first, and then the sight. */
export const seenThrough = ([a, b, c, d, e, f]: FlatMap, { scale, x, y }: Sight): FlatMap => [
  ...([a, b, c, d].map((value) => value * scale) as [number, number, number, number]),
  e * scale + x,
  f * scale + y,
];

/** A picture as it lies. */
export const asItLies: FlatMap = [1, 0, 0, 1, 0, 0];

/** How much room is left round the feet, of their size. */
const MARGIN = 0.3;

/** The sight that shows some spots and room round them. */
export function sightOf(spots: readonly Spot[], room: Size): Sight {
  const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs, left + 1) - left, Math.max(...ys, top + 1) - top];
  const { scale, x, y } = wholeSight({ width: wide * (1 + 2 * MARGIN), height: high * (1 + 2 * MARGIN) }, room);
  return { scale, x: x - (left - wide * MARGIN) * scale, y: y - (top - high * MARGIN) * scale };
}

import { degree, halfTurn } from './degrees.ts';
import type { Line } from './line.ts';

/**
 * How a line lies, whichever way it is directed.
 * @returns degrees in [0, 180), counter-clockwise from the x axis with y up; NaN where its direction is missing
 * @example lineAngle(lineThrough([0, 0], [-1, -1])) // 45
 */
export function lineAngle({ direction: [x, y] }: Line): number {
  return halfTurn(Math.atan2(y, x) / degree);
}

/**
 * How one line lies against another, whichever way they are directed.
 * @param line the line that is measured
 * @param base the line it is measured against, such as the ground
 * @returns degrees in [0, 180), counter-clockwise from `base` to `line` with y up; NaN where a direction is missing
 * @example lineAngleTo(lineThrough([0, 0], [1, 1]), lineThrough([0, 0], [0, 1])) // 135
 */
export function lineAngleTo(line: Line, base: Line): number {
  return halfTurn(lineAngle(line) - lineAngle(base));
}

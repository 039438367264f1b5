import type { DisplayUnits } from '../sheet/display.ts';
import { drawingScales } from './theme.ts';

export interface DrawingOptions {
  /** Millimetres of foot to one px; feet that stand side by side get the same. Left out: `drawingScales.usual`. */
  readonly mmPerPx?: number;
  /** The units of the numbers in the drawing and in its description. */
  readonly units?: DisplayUnits;
}

export interface Settled {
  readonly mmPerPx: number;
  readonly units: DisplayUnits;
  /** Too small for words inside; the description still holds every number. */
  readonly small: boolean;
}

/** The options with nothing left open. */
export function settled({
  mmPerPx = drawingScales.usual,
  units = { length: 'mm', mass: 'kg' },
}: DrawingOptions): Settled {
  if (!(mmPerPx > 0)) throw new TypeError(`The scale is ${mmPerPx} mm to a px; it must be above zero`);
  return { mmPerPx, units, small: mmPerPx > 1.2 };
}

/** Whether a part of a foot was measured. */
export function isKnown(value: number | undefined): value is number {
  return value !== undefined && Number.isFinite(value);
}

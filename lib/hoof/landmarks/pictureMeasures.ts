import type { Point } from '../../geometry/points.ts';
import type { DisplayUnits } from '../../sheet/display.ts';

/** What in the picture says how large things are; its points are placed like the others. */
export type PictureScale =
  | {
      /** A bar, or two marks on a rule: `bar_start` and `bar_end`. */
      readonly kind: 'bar';
      readonly length_mm: number;
      /** One standard error of its length; half a millimetre where not given. */
      readonly error_mm?: number;
    }
  | {
      /** A flat board in the plane of the foot: its four corners. */
      readonly kind: 'board';
      readonly width_mm: number;
      readonly height_mm: number;
      readonly error_mm?: number;
    };

export interface PictureOptions {
  /** One standard error of a placed point in each direction, in pixels of the picture; 3 where not given. */
  readonly placing_px?: number;
  /** The same for the points of the scale; as `placing_px`, or 1.5 where neither is given. */
  readonly scalePlacing_px?: number;
  /** The camera's focal length in pixels and the picture's size, where known: squareness is then told more closely. */
  readonly camera?: { readonly focal_px: number; readonly width_px: number; readonly height_px: number };
  /** How far off the lens was, in mm; a metre where not given. */
  readonly distance_mm?: number;
  /** Whether landmarks may lie off the plane of the scale; true where not given. */
  readonly depth?: boolean;
  /** In which units the drawing is labelled; mm where not given. */
  readonly units?: DisplayUnits;
}

/** One standard error from each cause, in the measure's unit; their squares add up to the square of the whole. */
export interface ErrorParts {
  /** Placing the points of the foot. */
  readonly placing: number;
  /** Placing the points of the scale, and its own size. */
  readonly scale: number;
  /** Not knowing how square the camera looked. */
  readonly squareness: number;
  /** What stands before or behind the plane of the scale. */
  readonly depth: number;
}

export interface PictureMeasure {
  /** A measured column's name where `column` is true, else a name of its own, such as `outline_area_mm2`. */
  readonly name: string;
  readonly column: boolean;
  readonly title: string;
  readonly unit: string;
  readonly value: number;
  /** One standard error, in `unit`. */
  readonly error: number;
  /** What the error is made of. */
  readonly parts: ErrorParts;
  /** The codes of the points it was worked from, scale and ground line included. */
  readonly from: readonly string[];
}

export interface Refusal {
  /** A measure's name; as in `PictureMeasure`. */
  readonly measure: string;
  readonly title: string;
  readonly reason: string;
  readonly remedy: string;
}

/** How far off square the camera looked. */
export interface Squareness {
  /** Degrees it looked down (positive) or up. */
  readonly tilt_deg: number;
  /** Degrees it stood to the left (positive) or to the right. */
  readonly turn_deg: number;
  /** Both together, from 0 to 90. */
  readonly off_deg: number;
  readonly words: string;
  readonly usable: boolean;
}

/** What to draw over the picture, in its pixels; `of` is a measure's name, or `ground`. The label of a refused one is empty. */
export type PictureMark =
  | { readonly kind: 'line'; readonly of: string; readonly from: Point; readonly to: Point }
  | { readonly kind: 'length'; readonly of: string; readonly from: Point; readonly to: Point; readonly label: string }
  | {
      readonly kind: 'angle';
      readonly of: string;
      readonly corner: Point;
      /** A point on each leg. */
      readonly from: Point;
      readonly to: Point;
      readonly label: string;
    }
  | { readonly kind: 'outline'; readonly of: string; readonly points: readonly Point[]; readonly label: string };

export interface PictureMeasures {
  readonly measures: readonly PictureMeasure[];
  /** `undefined` without a board: a bar doesn't tell. */
  readonly squareness: Squareness | undefined;
  readonly refusals: readonly Refusal[];
  readonly drawing: readonly PictureMark[];
  /** What had to be assumed, a sentence each. */
  readonly assumptions: readonly string[];
}

import { group } from 'd3-array';
import type { Point } from '../../geometry/points.ts';

/**
 * The placed points where a plane map takes them, by code; it notes which codes were asked for, so that a measure's
 * lineage is what was in fact read.
 */
export interface Located {
  /** The first of that code; NaN where none was placed. */
  one(code: string): Point;
  /** All of that code in order; none where fewer than `least`. */
  many(code: string, least?: number): readonly Point[];
  readonly asked: ReadonlySet<string>;
}

const nowhere: Point = [Number.NaN, Number.NaN];

/** The points with their codes, as they are to be asked for. */
export function located(codes: readonly string[], places: readonly Point[]): Located {
  const points = group(places, (_, i) => codes[i]);
  const asked = new Set<string>();
  const all = (code: string): readonly Point[] => {
    asked.add(code);
    return points.get(code) ?? [];
  };
  return {
    one: (code) => all(code)[0] ?? nowhere,
    many(code, least = 2) {
      const found = all(code);
      return found.length < least ? [] : found;
    },
    asked,
  };
}

/** Whether a point was placed. */
export function isThere(point: Point): boolean {
  return !Number.isNaN(point[0]);
}

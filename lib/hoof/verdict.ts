import type { Range } from './measure.ts';
import { beyond } from './ranges.ts';

/** A value is beyond a limit when it passes it by more than this many standard errors: 95 percent of normal errors are smaller. */
export const errorsBeyond = 1.96;

export interface Verdict {
  /** `missing`: no value. `no range`: nothing to hold it against. `can't tell`: outside, but not by more than its error. */
  readonly state: 'within' | 'beyond' | "can't tell" | 'no range' | 'missing';
  /** Which side it lies on, where it lies outside. */
  readonly side?: 'below' | 'above';
  /** The trade's word for that side. */
  readonly word?: string;
  /** How far outside, without sign, in the measure's unit. */
  readonly by?: number;
  /** Where it can't be told: how many repeats in all would tell if the value stays as it is; left out where the error is unknown or no number would. */
  readonly repeats?: number;
  readonly range?: Range;
}

/**
 * Whether a value lies within its range, beyond it by more than its error, or can't be told.
 * @param value  in the measure's unit; `NaN` for missing
 * @param error  one standard error in the same unit; `NaN` where unknown: then nothing outside can be told
 * @param range  the range that holds for this foot, if any
 * @param readings  how many repeats the value is a mean of; a repeat more shrinks the error by the root of their number
 * @returns `beyond` only where the value passes the limit by more than 1.96 standard errors
 * @example verdict(9, 1, { atMost: 5, above: 'underrun', ... }).state // 'beyond'
 * @example verdict(6, 1, { atMost: 5, ... }) // { state: "can't tell", side: 'above', by: 1, repeats: 4, ... }
 */
export function verdict(value: number, error: number, range: Range | undefined, readings = 1): Verdict {
  if (Number.isNaN(value)) return { state: 'missing', range };
  if (range === undefined) return { state: 'no range' };
  const signed = beyond(range, value);
  if (signed === 0) return { state: 'within', range };
  const by = Math.abs(signed);
  const outside =
    signed < 0
      ? ({ side: 'below', word: range.below, by, range } as const)
      : ({ side: 'above', word: range.above, by, range } as const);
  if (by > errorsBeyond * error) return { state: 'beyond', ...outside };
  const repeats = Math.floor(readings * ((errorsBeyond * error) / by) ** 2) + 1;
  return Number.isFinite(repeats) ? { state: "can't tell", ...outside, repeats } : { state: "can't tell", ...outside };
}

import type { Numbers } from './numbers.ts';

/** A planned study of a slope within groups, balanced: every unit of every group is seen at the same places. */
export interface SlopePlan {
  readonly groups: number;
  /** Units in each group, one where not given. */
  readonly units?: number;
  /** The places at which each unit is seen, about their mean or not, in any unit. */
  readonly places: Numbers;
  /** Standard deviation of the residuals. */
  readonly residualSd: number;
  /** Standard deviation of the slope between groups; 0 where not given. */
  readonly slopeSd?: number;
}

/**
 * The standard error and the degrees of freedom with which a balanced design will give a slope within groups. What groups
 * and units differ by on the whole drops out; where their slopes differ, the groups are what counts.
 * @returns in units of the outcome a unit of `places`
 * @source Snijders & Bosker 1993, Journal of Educational Statistics 18:237–259, for balanced designs
 * @example slopeDesign({ groups: 12, units: 4, places: [-2, 0, 2], residualSd: 2 }).df // 95
 */
export function slopeDesign({ groups, units = 1, places, residualSd, slopeSd = 0 }: SlopePlan): {
  se: number;
  df: number;
} {
  const values = Array.from(places);
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = units * values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  if (slopeSd > 0) return { se: Math.sqrt((slopeSd ** 2 + residualSd ** 2 / spread) / groups), df: groups - 1 };
  return { se: residualSd / Math.sqrt(groups * spread), df: groups * units * (values.length - 1) - 1 };
}

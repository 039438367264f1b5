import { fDistribution } from './distributions/fDistribution.ts';
import { mean } from './mean.ts';
import { type Numbers, present } from './numbers.ts';

export interface Anova {
  readonly n: number;
  readonly missing: number;
  /** How many groups hold anything. */
  readonly groups: number;
  readonly between: { readonly df: number; readonly ss: number; readonly ms: number };
  readonly within: { readonly df: number; readonly ss: number; readonly ms: number };
  /** Mean square between the groups over that within them, with the share of F distributed values above it. */
  readonly F: number;
  readonly p: number;
  readonly rSquared: number;
  readonly residualSd: number;
}

/**
 * The one-way analysis of variance.
 * @param groups for each group its values, in any one unit; a missing one is left out and counted
 * @returns sums of squares in the squared unit; NaN where the degrees of freedom are zero
 * @source Fisher 1925, Statistical Methods for Research Workers; digits checked against NIST's reference datasets
 * @example anova([[1, 2, 3], [4, 5, 6]]).F // 13.5
 */
export function anova(groups: readonly Numbers[]): Anova {
  const kept = groups.map(present).filter((group) => group.length > 0);
  const given = groups.reduce((sum, group) => sum + group.length, 0);
  const n = kept.reduce((sum, group) => sum + group.length, 0);
  // About a number from the middle of the data, so that a large common part takes no digits from the sums.
  const origin = n === 0 ? NaN : kept[0][0];
  const shifted = kept.map((group) => group.map((value) => value - origin));
  const centre = shifted.reduce((sum, group) => sum + group.length * mean(group), 0) / n;
  let between = 0;
  let within = 0;
  for (const group of shifted) {
    const middle = mean(group);
    between += group.length * (middle - centre) ** 2;
    for (const value of group) within += (value - middle) ** 2;
  }
  const parts = {
    between: meanSquare(kept.length - 1, between),
    within: meanSquare(n - kept.length, within),
  };
  const F = parts.between.ms / parts.within.ms;
  return {
    n,
    missing: given - n,
    groups: kept.length,
    ...parts,
    F,
    p: fDistribution.upper(F, parts.between.df, parts.within.df),
    rSquared: between / (between + within),
    residualSd: Math.sqrt(parts.within.ms),
  };
}

function meanSquare(df: number, ss: number) {
  return { df, ss, ms: df > 0 ? ss / df : NaN };
}

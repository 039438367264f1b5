import { noncentralT } from './distributions/noncentralT.ts';
import { studentT } from './distributions/studentT.ts';
import { rootBetween } from './rootBetween.ts';

/** How a test will be read. */
export interface PowerOptions {
  /** The p below which an effect counts as seen, 0.05 where not given. */
  readonly level?: number;
  /** 2 where not given; 1 looks only for an effect above zero. */
  readonly sides?: 1 | 2;
  /** Whether p below the level with the wrong sign counts too, as some tables have it; true where not given. */
  readonly bothTails?: boolean;
}

/**
 * How often an estimate with Student's t behind it will be told from zero.
 * @param effect the true value, in any unit
 * @param se the standard error that the design will give, in the same unit
 * @param df degrees of freedom of that standard error
 * @returns a share from `level` (or half of it) to 1
 * @source Cohen 1988, Statistical Power Analysis for the Behavioral Sciences, 2nd edition, ch. 2
 * @example powerOfEstimate(0.06, 0.015713484026367724, 239) // 0.9673…
 */
export function powerOfEstimate(
  effect: number,
  se: number,
  df: number,
  { level = 0.05, sides = 2, bothTails = true }: PowerOptions = {},
): number {
  const cut = studentT.quantile(1 - level / sides, df);
  const ncp = effect / se;
  if (sides === 1) return noncentralT.upper(cut, df, ncp);
  const right = noncentralT.upper(cut, df, Math.abs(ncp));
  return bothTails ? right + noncentralT.cdf(-cut, df, Math.abs(ncp)) : right;
}

/**
 * The smallest effect that will be told from zero with a wanted power.
 * @param power the share of studies that should see it, above `level` and below 1
 * @returns an effect above zero, in the unit of `se`
 * @example detectableEffect(0.0157134840263677, 239, 0.8) // 0.0442…
 */
export function detectableEffect(se: number, df: number, power: number, options: PowerOptions = {}): number {
  return se * rootBetween((ncp) => powerOfEstimate(ncp, 1, df, options) - power, 0, 1);
}

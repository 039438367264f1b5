/** Why a fit could not be made: what was found, what was expected, the way out. */
export interface FitFailure {
  readonly failure: string;
  /** How many points were there, and how many were missing. */
  readonly n: number;
  readonly missing: number;
}

/** Whether a fit failed. */
export function isFitFailure(fit: object): fit is FitFailure {
  return 'failure' in fit;
}

/** The failure of too few points. */
export function tooFew(n: number, expected: number, missing: number): FitFailure {
  return { failure: `Found ${n} points where at least ${expected} are needed; place more points`, n, missing };
}

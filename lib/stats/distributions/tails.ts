/** What lies below and above a place, each with its own digits: 1 − lower would lose those of a small upper tail. */
export interface Tails {
  readonly lower: number;
  readonly upper: number;
}

const nothing: Tails = { lower: 0, upper: 1 };
const everything: Tails = { lower: 1, upper: 0 };
const unknown: Tails = { lower: NaN, upper: NaN };

/** The tails of a distribution on 0 to ∞ at `x`: `inside` is asked only where x is above 0 and finite. */
export function positiveTails(x: number, inside: (x: number) => Tails): Tails {
  if (Number.isNaN(x)) return unknown;
  if (x <= 0) return nothing;
  return x === Infinity ? everything : inside(x);
}

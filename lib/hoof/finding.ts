import type { FootFacts } from './footFacts.ts';
import type { Measure } from './measure.ts';
import type { Verdict } from './verdict.ts';

/** A foot's latest value of one measure, and what makes it worth a word. Numbers are in the measure's unit. */
export interface Finding {
  /**
   * `raise`: unusual for this herd and for this foot, and changed by more than the error of measuring.
   * `unsure`: unusual for this herd, but whether it changed can't be told. `on purpose`: set so by vet and farrier.
   */
  readonly state: 'raise' | 'unsure' | 'on purpose';
  readonly foot: FootFacts;
  /** The row of the occasions that it speaks of. */
  readonly row: number;
  readonly measure: Measure;
  readonly value: number;
  /** One standard error; `NaN` where unknown. */
  readonly error: number;
  /** How unusual, in robust standard deviations: the geometric mean of the two below; higher comes first. */
  readonly score: number;
  /**
   * Against the feet of the same end: their median, how many feet, and how far off in robust SDs. At the same moment
   * where there are enough, else at `any` moment; left out where the herd has too few feet.
   */
  readonly herd?: { readonly median: number; readonly feet: number; readonly distance: number; readonly any: boolean };
  /** Against this foot's own earlier measurements at the same moment. */
  readonly own?: {
    readonly median: number;
    readonly earlier: number;
    readonly change: number;
    /** One standard error of the change; `NaN` where unknown. */
    readonly changeError: number;
    readonly distance: number;
    readonly last: { readonly value: number; readonly date: number };
  };
  /** The other foot of the pair at the same time. */
  readonly other?: number;
  readonly verdict: Verdict;
  /** Where it can't be told whether it changed: how many readings in all would tell if it stays as it is. */
  readonly repeats?: number;
  /** What else of this foot would have been worth a word, less so. */
  readonly also: readonly Finding[];
}

export interface Ranking {
  readonly raise: readonly Finding[];
  readonly unsure: readonly Finding[];
  readonly onPurpose: readonly Finding[];
  /** Feet that were measured, and of them those measured only once at that moment, which have nothing to have changed from. */
  readonly feet: number;
  readonly once: number;
}

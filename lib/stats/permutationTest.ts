/** How a permutation test came out. A tie with the observed value counts as at least as far. */
export interface PermutationTest {
  /** The share of arrangements at least as far from nothing, on either side. */
  readonly p: number;
  /** The share of arrangements at least as large, and at most as large. */
  readonly pGreater: number;
  readonly pLess: number;
  readonly atLeastAsFar: number;
  readonly atLeastAsLarge: number;
  readonly atMostAsLarge: number;
  /** How many arrangements were looked at. */
  readonly total: number;
  /** Whether those were all there are; else they were drawn, and the observed one counts as one more draw. */
  readonly exact: boolean;
}

/** What every permutation test can be told. */
export interface PermutationOptions {
  /** Up to how many arrangements all are looked at; more than that are drawn at random. */
  readonly exactUpTo?: number;
  /** How many are drawn where not all are looked at, 9,999 where not given. */
  readonly draws?: number;
  /** The seed of the draws, 1 where not given. */
  readonly seed?: number;
  /** Called about a hundred times on the way, with how many draws are done. */
  readonly onProgress?: (done: number, total: number) => void;
}

/** Counts arrangements whose statistic is at least as far from zero, as large and as small as the observed one. */
export class PermutationTally {
  #far = 0;
  #large = 0;
  #small = 0;
  #total = 0;

  /** @param margin how much rounding may take from a tie */
  constructor(
    readonly observed: number,
    readonly margin: number,
  ) {}

  add(statistic: number): void {
    this.#total++;
    if (Math.abs(statistic) >= Math.abs(this.observed) - this.margin) this.#far++;
    if (statistic >= this.observed - this.margin) this.#large++;
    if (statistic <= this.observed + this.margin) this.#small++;
  }

  result(exact: boolean): PermutationTest {
    if (Number.isNaN(this.observed)) return permutationTest(NaN, NaN, NaN, NaN, exact);
    return permutationTest(this.#far, this.#large, this.#small, this.#total, exact);
  }

  /** Adds what `draw` returns, `draws` times. */
  drawn(draw: () => number, { draws = 9999, onProgress }: PermutationOptions): PermutationTest {
    const often = Math.ceil(draws / 100);
    for (let done = 1; done <= draws; done++) {
      this.add(draw());
      if (done % often === 0) onProgress?.(done, draws);
    }
    return this.result(false);
  }
}

/**
 * The shares that follow from the counts.
 * @source Phipson & Smyth 2010, Statistical Applications in Genetics and Molecular Biology 9:39, for drawn ones
 */
export function permutationTest(
  atLeastAsFar: number,
  atLeastAsLarge: number,
  atMostAsLarge: number,
  total: number,
  exact: boolean,
): PermutationTest {
  const share = (count: number) => (exact ? count / total : (count + 1) / (total + 1));
  return {
    p: share(atLeastAsFar),
    pGreater: share(atLeastAsLarge),
    pLess: share(atMostAsLarge),
    atLeastAsFar,
    atLeastAsLarge,
    atMostAsLarge,
    total,
    exact,
  };
}

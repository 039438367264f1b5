import { mean } from './mean.ts';
import { type Numbers, present } from './numbers.ts';
import { type PermutationOptions, PermutationTally, type PermutationTest, permutationTest } from './permutationTest.ts';
import { random } from './random.ts';

export interface TwoGroupPermutation extends PermutationTest {
  readonly n: readonly [number, number];
  readonly missing: number;
  /** The mean of the first group minus that of the second. */
  readonly difference: number;
}

/**
 * The permutation test of two unpaired groups: were the labels shuffled, how often would the means be at least as
 * far apart?
 * @param a values of the first group in any one unit; a missing one is left out and counted
 * @param b values of the second group in the same unit
 * @param options `exactUpTo` splits all are looked at, 1,000,000 where not given; beyond, `draws` from `seed`
 * @returns the difference of the means and the shares of splits; all NaN where a group is empty
 * @source Fisher 1935, The Design of Experiments; Pitman 1937, Supplement to the JRSS 4:119–130
 * @example permuteTwoGroups([1, 2, 3], [7, 8, 9]).p // 0.1; 2 of 20
 */
export function permuteTwoGroups(a: Numbers, b: Numbers, options: PermutationOptions = {}): TwoGroupPermutation {
  const [first, second] = [present(a), present(b)];
  const n = [first.length, second.length] as const;
  const missing = a.length + b.length - n[0] - n[1];
  const difference = mean(first) - mean(second);
  if (n[0] === 0 || n[1] === 0) return { n, missing, difference: NaN, ...permutationTest(NaN, NaN, NaN, NaN, true) };

  const pooled = new Float64Array(n[0] + n[1]);
  pooled.set(first);
  pooled.set(second, n[0]);
  const centre = mean(pooled);
  // About the common mean the difference is proportional to the sum of the first group.
  let spread = 0;
  for (let i = 0; i < pooled.length; i++) {
    pooled[i] -= centre;
    spread = Math.max(spread, Math.abs(pooled[i]));
  }
  const scale = 1 / n[0] + 1 / n[1];
  const tally = new PermutationTally(difference, 1e-9 * spread);
  if (splits(n[0] + n[1], n[0]) <= (options.exactUpTo ?? 1e6)) {
    everySum(pooled, 0, n[0], 0, (sum) => tally.add(sum * scale));
    return { n, missing, difference, ...tally.result(true) };
  }
  const { below } = random(options.seed ?? 1);
  const draw = () => {
    let sum = 0;
    for (let i = 0; i < n[0]; i++) {
      const j = i + below(pooled.length - i);
      const chosen = pooled[j];
      pooled[j] = pooled[i];
      pooled[i] = chosen;
      sum += chosen;
    }
    return sum * scale;
  };
  return { n, missing, difference, ...tally.drawn(draw, options) };
}

/** In how many ways `k` of `n` can be chosen. */
function splits(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return ways;
}

/** The sum of every choice of `k` numbers from place `from` on, added to `sum`. */
function everySum(numbers: Float64Array, from: number, k: number, sum: number, found: (sum: number) => void): void {
  if (k === 0) found(sum);
  else for (let i = from; i <= numbers.length - k; i++) everySum(numbers, i + 1, k - 1, sum + numbers[i], found);
}

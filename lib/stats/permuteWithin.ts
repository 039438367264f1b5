import { type Numbers, presentRows } from './numbers.ts';
import { type PermutationOptions, PermutationTally, type PermutationTest } from './permutationTest.ts';
import { random } from './random.ts';
import { rowsByGroup } from './rowsByGroup.ts';

export interface WithinPermutation extends PermutationTest {
  readonly n: number;
  readonly missing: number;
  /** How many groups hold rows. */
  readonly groups: number;
  /** The least-squares slope of y on x within the groups, in units of y a unit of x. */
  readonly slope: number;
}

/**
 * The permutation test of a slope within groups: were the outcomes shuffled among the rows of each group, never
 * between groups, how often would the slope be at least as far from zero?
 * @param x what is thought to matter, one number a row; a row with anything missing is left out and counted
 * @param y the outcome, one number a row
 * @param groups which group a row belongs to, one number a row, any numbers
 * @param options `exactUpTo` arrangements all are looked at, 100,000 where not given; beyond, `draws` from `seed`
 * @returns the slope and the shares of arrangements; NaN where x varies in no group
 * @source Good 2005, Permutation, Parametric and Bootstrap Tests of Hypotheses, 3rd edition: restricted randomisation
 * @example permuteWithin([1, 2, 3, 1, 2, 3], [4, 5, 6, 1, 2, 3], [0, 0, 0, 1, 1, 1]).atLeastAsFar // 2; of 36
 */
export function permuteWithin(
  x: Numbers,
  y: Numbers,
  groups: Numbers,
  options: PermutationOptions = {},
): WithinPermutation {
  const { columns, missing } = presentRows([x, y, groups]);
  const blocks = blocksOf(columns);
  let [sxx, syy, sxy] = [0, 0, 0];
  for (const { x: u, y: v } of blocks)
    for (let i = 0; i < u.length; i++) {
      sxx += u[i] * u[i];
      syy += v[i] * v[i];
      sxy += u[i] * v[i];
    }
  const tally = new PermutationTally(sxx > 0 ? sxy : NaN, 1e-9 * Math.sqrt(sxx * syy));
  const head = { n: columns[0].length, missing, groups: blocks.length, slope: sxx > 0 ? sxy / sxx : NaN };
  const arrangements = blocks.reduce((ways, block) => ways * factorial(block.y.length), 1);
  if (arrangements <= (options.exactUpTo ?? 1e5)) {
    everySum(blocks.map(crossProducts), 0, 0, tally);
    return { ...head, ...tally.result(true) };
  }
  const { below } = random(options.seed ?? 1);
  return { ...head, ...tally.drawn(() => shuffled(blocks, below), options) };
}

interface Block {
  /** Both about their mean in the group. */
  readonly x: Float64Array;
  readonly y: Float64Array;
}

function blocksOf([x, y, groups]: readonly Float64Array[]): Block[] {
  const centred = (values: Float64Array, rows: Int32Array) => {
    const middle = rows.reduce((sum, row) => sum + values[row], 0) / rows.length;
    return Float64Array.from(rows, (row) => values[row] - middle);
  };
  return rowsByGroup(groups).map((rows) => ({ x: centred(x, rows), y: centred(y, rows) }));
}

/** Shuffles every block's outcomes in place and returns the sum of products with x (Fisher & Yates). */
function shuffled(blocks: readonly Block[], below: (n: number) => number): number {
  let sum = 0;
  for (const { x, y } of blocks) {
    for (let i = y.length - 1; i > 0; i--) {
      const j = below(i + 1);
      const chosen = y[j];
      y[j] = y[i];
      y[i] = chosen;
      sum += x[i] * chosen;
    }
    sum += x[0] * y[0];
  }
  return sum;
}

/** The sum of products under every order of the block's outcomes (Heap 1963, The Computer Journal 6:293–298). */
function crossProducts({ x, y }: Block): Float64Array {
  const order = y.slice();
  const sums = new Float64Array(factorial(y.length));
  let filled = 0;
  const keep = () => {
    let sum = 0;
    for (let i = 0; i < x.length; i++) sum += x[i] * order[i];
    sums[filled++] = sum;
  };
  const permute = (size: number) => {
    if (size <= 1) return keep();
    for (let i = 0; i < size; i++) {
      permute(size - 1);
      const j = size % 2 === 0 ? i : 0;
      [order[j], order[size - 1]] = [order[size - 1], order[j]];
    }
  };
  permute(order.length);
  return sums;
}

/** Every sum of one number from each list. */
function everySum(lists: readonly Float64Array[], from: number, sum: number, tally: PermutationTally): void {
  if (from === lists.length) tally.add(sum);
  else for (const number of lists[from]) everySum(lists, from + 1, sum + number, tally);
}

function factorial(n: number): number {
  let product = 1;
  for (let i = 2; i <= n; i++) product *= i;
  return product;
}

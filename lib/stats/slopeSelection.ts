import { inversions } from './inversions.ts';
import { random } from './random.ts';
import { selectNth } from './selectNth.ts';

/** Points that are paired with each other, sorted by x, none missing. */
export interface Points {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/**
 * Single ranks among the slopes of all pairs of points with different x, without looking at all the pairs.
 *
 * The pairs with a slope below s are those that stand in the wrong order after y − s·x is taken in the order of x, and
 * can be counted while sorting. Drawn slopes close in on the wanted rank; the few that are left are found one by one.
 * @param blocks only points of one block are paired
 * @param atOnce up to how many slopes are simply listed
 * @source Matoušek 1991, Information Processing Letters 39:183–187
 */
export class SlopeSelection {
  /** How many pairs have different x. */
  readonly count: number;
  readonly #blocks: readonly Points[];
  readonly #atOnce: number;
  readonly #listed: Float64Array | undefined;

  constructor(blocks: readonly Points[], atOnce = 1_000_000) {
    this.#blocks = blocks;
    this.#atOnce = atOnce;
    this.count = blocks.reduce((sum, { x }) => sum + unequalPairs(x), 0);
    if (this.count <= atOnce) this.#listed = this.#slopesBetween(-Infinity, Infinity);
  }

  /** The slope with the given rank, from 0 for the smallest to `count` − 1. */
  atRank(rank: number): number {
    if (this.#listed) return selectNth(this.#listed, rank);
    const draw = this.#drawing();
    let [low, high] = [-Infinity, Infinity];
    let [belowLow, belowHigh] = [0, this.count];
    while (belowHigh - belowLow > this.#atOnce) {
      const drawn = new Float64Array(64);
      for (let i = 0; i < drawn.length; ) {
        const slope = draw();
        if (slope >= low && slope < high) drawn[i++] = slope;
      }
      const pivot = selectNth(drawn, Math.floor((64 * (rank - belowLow)) / (belowHigh - belowLow)));
      const slack = this.#slack(pivot);
      const below = this.#countBelow(pivot - slack);
      const upTo = this.#countBelow(pivot + slack);
      if (rank < below) [high, belowHigh] = [pivot - slack, below];
      else if (rank >= upTo) [low, belowLow] = [pivot + slack, upTo];
      else if (upTo - below > this.#atOnce) return pivot;
      else [low, high, belowLow, belowHigh] = [pivot - slack, pivot + slack, below, upTo];
    }
    const left = this.#slopesBetween(low, high);
    return selectNth(left, Math.max(0, Math.min(rank - belowLow, left.length - 1)));
  }

  #countBelow(slope: number): number {
    let count = 0;
    for (const points of this.#blocks) count += inversions(tilted(points, slope));
    return count;
  }

  /** How far from a slope rounding may put a pair that has it. */
  #slack(slope: number): number {
    let slack = Number.MIN_VALUE / Number.EPSILON;
    for (const { x, y } of this.#blocks) {
      let [widest, highest, gap] = [0, 0, Infinity];
      for (let i = 0; i < x.length; i++) {
        widest = Math.max(widest, Math.abs(x[i]));
        highest = Math.max(highest, Math.abs(y[i]));
        if (i > 0 && x[i] > x[i - 1]) gap = Math.min(gap, x[i] - x[i - 1]);
      }
      slack = Math.max(slack, (2 * Number.EPSILON * (highest + Math.abs(slope) * widest)) / gap);
    }
    return slack;
  }

  /** The slope of a random pair, NaN where its x are equal. */
  #drawing(): () => number {
    const { uniform, below } = random(1);
    let total = 0;
    const ends = this.#blocks.map(({ x }) => (total += (x.length * (x.length - 1)) / 2));
    return () => {
      const at = uniform() * total;
      const { x, y } = this.#blocks[ends.findIndex((end) => at < end)];
      const i = below(x.length);
      const j = below(x.length);
      return x[i] === x[j] ? NaN : (y[i] - y[j]) / (x[i] - x[j]);
    };
  }

  /** The slopes from `low` up to but not including `high`: each is one step of an insertion sort. */
  #slopesBetween(low: number, high: number): Float64Array {
    const found: number[] = [];
    for (const { x, y } of this.#blocks) {
      const before = order({ x, y }, low);
      const after = order({ x, y }, high);
      const rows = Array.from(x.keys()).sort((a, b) => before[a] - before[b] || a - b);
      for (let i = 1; i < rows.length; i++) {
        const row = rows[i];
        let j = i - 1;
        for (; j >= 0 && after[rows[j]] > after[row]; j--) {
          if (x[row] !== x[rows[j]]) found.push((y[row] - y[rows[j]]) / (x[row] - x[rows[j]]));
          rows[j + 1] = rows[j];
        }
        rows[j + 1] = row;
      }
    }
    return Float64Array.from(found);
  }
}

/** What orders the points when y − slope·x does, for an infinite slope too. */
function order({ x, y }: Points, slope: number): Float64Array {
  if (Number.isFinite(slope)) return y.map((value, row) => value - slope * x[row]);
  return slope < 0 ? x : x.map((value) => -value);
}

/** y − slope·x in the order of x; points with the same x, whose pairs have no slope, in rising order. */
function tilted(points: Points, slope: number): Float64Array {
  const { x } = points;
  const tilt = order(points, slope);
  for (let from = 0, to = 0; from < x.length; from = to) {
    while (to < x.length && x[to] === x[from]) to++;
    if (to - from > 1) tilt.subarray(from, to).sort();
  }
  return tilt;
}

/** How many pairs of sorted numbers differ. */
function unequalPairs(sorted: Float64Array): number {
  let pairs = 0;
  for (let from = 0, to = 0; from < sorted.length; from = to) {
    while (to < sorted.length && sorted[to] === sorted[from]) to++;
    pairs += from * (to - from);
  }
  return pairs;
}

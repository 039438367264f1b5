import type { Groups } from '../table.ts';

/** Veltkamp's splitter for doubles: 2^27 + 1. */
const splitter = 134_217_729;

/** Above this share a term that leaves may take digits of the others with it, and the group is added up afresh. */
const swamped = 2 ** 40;

/** Below this share of the sum of squares, what is left after taking off the mean is rounding: the values are equal. */
const rounding = 2 ** -90;

/**
 * Sums of each group's values, or of their squares, that follow single changes. Each sum is kept as an unevaluated pair of
 * doubles (some 32 digits), so that a long series of edits ends where adding up afresh would. Missing values are left out.
 * @source Dekker 1971, Numerische Mathematik 18:224–242
 */
export class RunningSums {
  /** How many values each group has. */
  readonly counts: Float64Array;
  readonly #high: Float64Array;
  readonly #low: Float64Array;

  /** @param values  one a row; of text, `NaN` where missing and any number elsewhere */
  constructor(
    values: Float64Array,
    groups: Groups,
    readonly power: 1 | 2,
  ) {
    this.counts = new Float64Array(groups.count);
    this.#high = new Float64Array(groups.count);
    this.#low = new Float64Array(groups.count);
    this.#addAll(values, groups.codes);
  }

  /** The sum; 0 for a group without values. */
  total(group: number): number {
    return this.#high[group] + this.#low[group];
  }

  /**
   * One value of a group becomes another, either of them perhaps missing.
   * @returns whether the group must be added up afresh, because a value left beside which the others were too small
   */
  replace(group: number, before: number, after: number): boolean {
    let largest = 0;
    if (!Number.isNaN(before)) {
      this.#add(group, before, -1);
      largest = Math.abs(this.power === 1 ? before : before * before);
    }
    if (!Number.isNaN(after)) this.#add(group, after, 1);
    const high = Math.abs(this.#high[group]);
    return this.counts[group] > 0 && !(largest <= swamped * high);
  }

  /** Adds up one group afresh from the rows it has. */
  restart(group: number, rows: ArrayLike<number>, values: Float64Array): void {
    this.counts[group] = 0;
    this.#high[group] = 0;
    this.#low[group] = 0;
    for (let i = 0; i < rows.length; i++) if (!Number.isNaN(values[rows[i]])) this.#add(group, values[rows[i]], 1);
  }

  #addAll(values: Float64Array, codes: Int32Array): void {
    const { counts, power } = this;
    const [high, low] = [this.#high, this.#low];
    for (let row = 0; row < values.length; row++) {
      const value = values[row];
      if (Number.isNaN(value)) continue;
      const group = codes[row];
      counts[group]++;
      if (power === 1) addTo(high, low, group, value, 0);
      else addTo(high, low, group, value * value, lostOf(value, value));
    }
  }

  #add(group: number, value: number, sign: 1 | -1): void {
    this.counts[group] += sign;
    if (this.counts[group] === 0) {
      this.#high[group] = 0;
      this.#low[group] = 0;
    } else if (this.power === 1) addTo(this.#high, this.#low, group, sign * value, 0);
    else addTo(this.#high, this.#low, group, sign * value * value, sign * lostOf(value, value));
  }

  /**
   * The sample standard deviation of one group from its sums and its sums of squares.
   * @returns `NaN` for fewer than two values; 0 where they are equal
   */
  static sd(sums: RunningSums, squares: RunningSums, group: number): number {
    const count = sums.counts[group];
    if (count < 2) return Number.NaN;
    const high = sums.#high[group];
    const low = lostOf(high, high) + 2 * high * sums.#low[group];
    const first = (high * high) / count;
    const second = (high * high - first * count - lostOf(first, count) + low) / count;
    const left = squares.#high[group] - first + (squares.#low[group] - second);
    return left <= rounding * squares.#high[group] ? 0 : Math.sqrt(left / (count - 1));
  }
}

/** Adds a pair of numbers to the pair that a sum is kept as. */
function addTo(high: Float64Array, low: Float64Array, at: number, term: number, termLow: number): void {
  const before = high[at];
  const sum = before + term;
  const part = sum - before;
  const rest = before - (sum - part) + (term - part) + (low[at] + termLow);
  const total = sum + rest;
  high[at] = total;
  low[at] = rest - (total - sum);
}

/** What a product loses when it is rounded to a double. */
function lostOf(x: number, y: number): number {
  const cx = splitter * x;
  const bigX = cx - (cx - x);
  const smallX = x - bigX;
  const cy = splitter * y;
  const bigY = cy - (cy - y);
  const smallY = y - bigY;
  return bigX * bigY - x * y + bigX * smallY + smallX * bigY + smallX * smallY;
}

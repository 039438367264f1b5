import type { Groups } from './table.ts';

/** The engine keeps what it compiled for a function that is called often and belongs to no object. */
const block = 4096;

/**
 * The values of one column with their groups, and what several summaries of them share: counts, sums, sorted values.
 * Each is worked out once, on first use. A missing value belongs to no group.
 */
export class Grouped {
  #counts: Float64Array | undefined;
  #sums: Float64Array | undefined;
  #sorted: { starts: Int32Array; values: Float64Array } | undefined;

  constructor(
    readonly values: Float64Array,
    readonly groups: Groups,
  ) {}

  /** How many values each group has. */
  get counts(): Float64Array {
    if (!this.#counts) this.#add();
    return this.#counts!;
  }

  /** The sum of each group; 0 for a group without values. */
  get sums(): Float64Array {
    if (!this.#sums) this.#add();
    return this.#sums!;
  }

  /** The values group by group, ascending; those of group `g` stand from `starts[g]` to before `starts[g + 1]`. */
  get sorted(): { starts: Int32Array; values: Float64Array } {
    this.#sorted ??= this.#sort();
    return this.#sorted;
  }

  #add(): void {
    const { values } = this;
    const { codes, count } = this.groups;
    const sums = new Float64Array(count);
    const counts = new Float64Array(count);
    for (let from = 0; from < values.length; from += block)
      addRows(values, codes, from, Math.min(from + block, values.length), sums, counts);
    this.#sums = sums;
    this.#counts = counts;
  }

  #sort(): { starts: Int32Array; values: Float64Array } {
    const { values, counts } = this;
    const { codes, count } = this.groups;
    const starts = new Int32Array(count + 1);
    for (let group = 0; group < count; group++) starts[group + 1] = starts[group] + counts[group];
    const next = starts.slice(0, count);
    const sorted = new Float64Array(starts[count]);
    const rows = values.length;
    for (let row = 0; row < rows; row++) {
      const value = values[row];
      if (!Number.isNaN(value)) sorted[next[codes[row]]++] = value;
    }
    for (let group = 0; group < count; group++) sorted.subarray(starts[group], starts[group + 1]).sort();
    return { starts, values: sorted };
  }
}

/** Adds the values of some rows to the sums of their groups, four rows a turn as in the kernels of formulas. */
function addRows(
  values: Float64Array,
  codes: Int32Array,
  from: number,
  to: number,
  sums: Float64Array,
  counts: Float64Array,
): void {
  let row = from;
  for (; row < to - 3; row += 4) {
    const a = values[row];
    const b = values[row + 1];
    const c = values[row + 2];
    const d = values[row + 3];
    const e = codes[row];
    const f = codes[row + 1];
    const g = codes[row + 2];
    const h = codes[row + 3];
    if (!Number.isNaN(a)) {
      sums[e] += a;
      counts[e]++;
    }
    if (!Number.isNaN(b)) {
      sums[f] += b;
      counts[f]++;
    }
    if (!Number.isNaN(c)) {
      sums[g] += c;
      counts[g]++;
    }
    if (!Number.isNaN(d)) {
      sums[h] += d;
      counts[h]++;
    }
  }
  for (; row < to; row++) {
    if (Number.isNaN(values[row])) continue;
    sums[codes[row]] += values[row];
    counts[codes[row]]++;
  }
}

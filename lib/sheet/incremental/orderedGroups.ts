import { quantileSorted } from '../../stats/index.ts';
import type { Groups } from '../table.ts';

/**
 * Each group's values in order, following single changes: a value that changes moves only the values it passes, in
 * one block. All groups share one array, with room in each for as many values as it has rows. Missing values are left out.
 */
export class OrderedGroups {
  readonly #starts: Int32Array;
  readonly #counts: Int32Array;
  readonly #values: Float64Array;

  constructor(values: Float64Array, groups: Groups) {
    const { codes, count } = groups;
    const starts = new Int32Array(count + 1);
    for (let row = 0; row < values.length; row++) starts[codes[row] + 1]++;
    for (let group = 0; group < count; group++) starts[group + 1] += starts[group];
    const counts = new Int32Array(count);
    const sorted = new Float64Array(values.length);
    for (let row = 0; row < values.length; row++) {
      const value = values[row];
      const group = codes[row];
      if (!Number.isNaN(value)) sorted[starts[group] + counts[group]++] = value;
    }
    for (let group = 0; group < count; group++) sort(sorted, starts[group], starts[group] + counts[group]);
    this.#starts = starts;
    this.#counts = counts;
    this.#values = sorted;
  }

  /** One value of a group becomes another, either of them perhaps missing. */
  replace(group: number, before: number, after: number): void {
    const values = this.#values;
    const start = this.#starts[group];
    const end = start + this.#counts[group];
    // A missing value waits behind the last: it comes from there, or goes there.
    const from = Number.isNaN(before) ? end : this.#place(before, start, end);
    const to = Number.isNaN(after) ? end : this.#place(after, start, end);
    if (from < to) values.copyWithin(from, from + 1, to);
    else values.copyWithin(to + 1, to, from);
    if (!Number.isNaN(after)) values[from < to ? to - 1 : to] = after;
    this.#counts[group] += Number(!Number.isNaN(after)) - Number(!Number.isNaN(before));
  }

  min(group: number): number {
    return this.#counts[group] === 0 ? Number.NaN : this.#values[this.#starts[group]];
  }

  max(group: number): number {
    return this.#counts[group] === 0 ? Number.NaN : this.#values[this.#starts[group] + this.#counts[group] - 1];
  }

  /** The quantile of R's type 7; `NaN` for a group without values. */
  quantile(group: number, share: number): number {
    const start = this.#starts[group];
    return quantileSorted(this.#values.subarray(start, start + this.#counts[group]), share);
  }

  /** The first place from `start` whose value is not smaller. */
  #place(value: number, start: number, end: number): number {
    const values = this.#values;
    let low = start;
    let high = end;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if (values[middle] < value) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/** Most groups are a few feet: for those the call that sorts a sub-array costs more than sorting. */
function sort(values: Float64Array, start: number, end: number): void {
  if (end - start > 24) {
    values.subarray(start, end).sort();
    return;
  }
  for (let i = start + 1; i < end; i++) {
    const value = values[i];
    let at = i;
    while (at > start && values[at - 1] > value) {
      values[at] = values[at - 1];
      at--;
    }
    values[at] = value;
  }
}

import { quantileSorted } from '../../stats/quantile.ts';
import { say } from '../../words/say.ts';
import type { Kind } from '../column.ts';
import type { Grouped } from '../grouped.ts';
import { listed } from '../listed.ts';
import { finite } from './operators.ts';
import { over } from './sqlText.ts';

/** One number a group from a column's values. Missing values are left out; a group without any is missing. */
export interface Summary {
  readonly sort: 'summary';
  readonly name: string;
  /** Before the keys; any number of key columns may follow. */
  readonly parameters: readonly string[];
  readonly about: string;
  /** `first`: as the column; `spread`: as the column, of dates a number of days; `1`: a pure number. */
  readonly gives: 'first' | 'spread' | '1';
  /** What it has a meaning for; a yes/no is handed over as the number 1 or 0. */
  readonly kinds: readonly Kind[];
  /** One value a group. `p` is the share below, of `quantile` alone. */
  readonly of: (grouped: Grouped, p: number) => Float64Array;
  /** One a row: the derivative of its group's result by this row's value; 0 for a missing value. */
  readonly weights: (grouped: Grouped, result: Float64Array, p: number) => Float64Array;
  /**
   * Standard SQL over a window; `keys` are column names, none for the whole table. Of an order statistic, for which the
   * standard has no window, the share of the values below it.
   */
  readonly sql: ((x: string, keys: readonly string[]) => string) | { readonly share: (p: number) => number };
  readonly words: (x: string, keys: readonly string[], p: number) => string;
}

function within(keys: readonly string[]): string {
  return keys.length === 0 ? say` over the whole table` : say` for each ${listed(keys)}`;
}

function byGroup(grouped: Grouped, of: (group: number) => number): Float64Array {
  return Float64Array.from({ length: grouped.groups.count }, (_, group) => of(group));
}

/** `of` is asked for the present values only; missing ones weigh nothing. */
function byRow(grouped: Grouped, of: (group: number, value: number) => number): Float64Array {
  const { values, groups } = grouped;
  return values.map((value, row) => (Number.isNaN(value) ? 0 : of(groups.codes[row], value)));
}

function mean(grouped: Grouped): Float64Array {
  const { sums, counts } = grouped;
  // 0 / 0 is missing.
  return sums.map((sum, group) => finite(sum / counts[group]));
}

function sd(grouped: Grouped): Float64Array {
  const { values, counts } = grouped;
  const { codes, count } = grouped.groups;
  const means = mean(grouped);
  const squares = new Float64Array(count);
  for (let row = 0; row < values.length; row++) {
    const value = values[row];
    if (Number.isNaN(value)) continue;
    const group = codes[row];
    const away = value - means[group];
    squares[group] += away * away;
  }
  return squares.map((square, group) =>
    counts[group] < 2 ? Number.NaN : finite(Math.sqrt(square / (counts[group] - 1))),
  );
}

function extreme(grouped: Grouped, sign: 1 | -1): Float64Array {
  const { values } = grouped;
  const { codes, count } = grouped.groups;
  const found = new Float64Array(count).fill(Number.NaN);
  for (let row = 0; row < values.length; row++) {
    const value = values[row];
    const group = codes[row];
    if (!Number.isNaN(value) && !(sign * found[group] >= sign * value)) found[group] = value;
  }
  return found;
}

/** The first row that holds the extreme carries all of it. */
function extremeWeights(grouped: Grouped, result: Float64Array): Float64Array {
  const taken = new Uint8Array(grouped.groups.count);
  return byRow(grouped, (group, value) => (value === result[group] && taken[group]++ === 0 ? 1 : 0));
}

function quantile(grouped: Grouped, p: number): Float64Array {
  const { starts, values } = grouped.sorted;
  return byGroup(grouped, (group) => quantileSorted(values.subarray(starts[group], starts[group + 1]), p));
}

/** The two order statistics about `p` share the weight; of equal values the first rows carry it. */
function quantileWeights(grouped: Grouped, p: number): Float64Array {
  const { starts, values } = grouped.sorted;
  const seen = new Map<number, number>();
  const low = byGroup(grouped, (group) => Math.floor(p * Math.max(0, starts[group + 1] - starts[group] - 1)));
  const share = byGroup(grouped, (group) => p * Math.max(0, starts[group + 1] - starts[group] - 1) - low[group]);
  return byRow(grouped, (group, value) => {
    const first = starts[group] + low[group];
    const second = Math.min(first + 1, starts[group + 1] - 1);
    const lower = values[first];
    const upper = values[second];
    if (value !== lower && value !== upper) return 0;
    const bit = seen.get(group) ?? 0;
    if (value === lower && (bit & 1) === 0) {
      seen.set(group, bit | 1);
      return 1 - share[group];
    }
    if (value === upper && (bit & 2) === 0) {
      seen.set(group, bit | 2);
      return share[group];
    }
    return 0;
  });
}

export const summaries: readonly Summary[] = [
  {
    sort: 'summary',
    name: 'mean',
    parameters: ['x'],
    about: say`the arithmetic mean`,
    gives: 'first',
    kinds: ['number', 'date'],
    of: mean,
    weights: (grouped) => byRow(grouped, (group) => 1 / grouped.counts[group]),
    sql: (x, keys) => over(`AVG(${x})`, keys),
    words: (x, keys) => say`the mean of ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'median',
    parameters: ['x'],
    about: say`the middle value, or half way between the middle two`,
    gives: 'first',
    kinds: ['number', 'date'],
    of: (grouped) => quantile(grouped, 0.5),
    weights: (grouped) => quantileWeights(grouped, 0.5),
    sql: { share: () => 0.5 },
    words: (x, keys) => say`the median of ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'sd',
    parameters: ['x'],
    about: say`the standard deviation, with n − 1; of fewer than two values missing`,
    gives: 'spread',
    kinds: ['number', 'date'],
    of: sd,
    weights: (grouped, result) => {
      const means = mean(grouped);
      return byRow(grouped, (group, value) => {
        const spread = (grouped.counts[group] - 1) * result[group];
        // Equal values have no slope: their spread can only grow, and 0 / 0 is missing.
        return (value - means[group]) / spread;
      });
    },
    sql: (x, keys) => over(`STDDEV_SAMP(${x})`, keys),
    words: (x, keys) => say`the standard deviation of ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'min',
    parameters: ['x'],
    about: say`the smallest value`,
    gives: 'first',
    kinds: ['number', 'date'],
    of: (grouped) => extreme(grouped, -1),
    weights: extremeWeights,
    sql: (x, keys) => over(`MIN(${x})`, keys),
    words: (x, keys) => say`the smallest ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'max',
    parameters: ['x'],
    about: say`the largest value`,
    gives: 'first',
    kinds: ['number', 'date'],
    of: (grouped) => extreme(grouped, 1),
    weights: extremeWeights,
    sql: (x, keys) => over(`MAX(${x})`, keys),
    words: (x, keys) => say`the largest ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'sum',
    parameters: ['x'],
    about: say`the sum`,
    gives: 'first',
    kinds: ['number'],
    of: (grouped) => grouped.sums.map((sum, group) => (grouped.counts[group] === 0 ? Number.NaN : finite(sum))),
    weights: (grouped) => byRow(grouped, () => 1),
    sql: (x, keys) => over(`SUM(${x})`, keys),
    words: (x, keys) => say`the sum of ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'count',
    parameters: ['x'],
    about: say`how many values are not missing`,
    gives: '1',
    kinds: ['number', 'date', 'text'],
    of: (grouped) => grouped.counts.slice(),
    weights: (grouped) => byRow(grouped, () => 0),
    sql: (x, keys) => `(1E0 * ${over(`COUNT(${x})`, keys)})`,
    words: (x, keys) => say`the number of ${x}${within(keys)}`,
  },
  {
    sort: 'summary',
    name: 'quantile',
    parameters: ['x', 'p'],
    about: say`the value with the share p of the others below it, linear between neighbours`,
    gives: 'first',
    kinds: ['number', 'date'],
    of: quantile,
    weights: (grouped, _, p) => quantileWeights(grouped, p),
    sql: { share: (p) => p },
    words: (x, keys, p) => say`the ${p} quantile of ${x}${within(keys)}`,
  },
];

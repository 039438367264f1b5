import { normal } from './distributions/normal.ts';
import { inversions } from './inversions.ts';
import { type Numbers, presentRows } from './numbers.ts';

export interface KendallTau {
  readonly n: number;
  readonly missing: number;
  /** Kendall's tau-b, −1 to 1. */
  readonly tau: number;
  /** Pairs that go the same way minus pairs that go opposite ways. */
  readonly s: number;
  /** The variance of `s` if x and y had nothing to do with each other. */
  readonly varianceS: number;
  readonly z: number;
  /** Two-sided, from the normal distribution without continuity correction. */
  readonly p: number;
}

/**
 * Kendall's rank correlation, corrected for ties.
 * @param x numbers in any unit; a pair with either missing is left out and counted
 * @param y numbers in any unit, as many
 * @returns tau-b with its two-sided p; NaN where either side has no two different values
 * @source Kendall 1970, Rank Correlation Methods, 4th edition, 3.3 and 4.4
 * @example kendallTau([1, 2, 3, 4], [1, 3, 2, 4]).tau // 0.6666666666666666
 */
export function kendallTau(x: Numbers, y: Numbers): KendallTau {
  const { columns, missing } = presentRows([x, y]);
  const [u, v] = columns;
  const n = u.length;
  const [tx, ty] = [tieSums(u), tieSums(v)];
  const pairs = (n * (n - 1)) / 2;
  const s = pairs - tx.pairs - ty.pairs + tiedTwice(u, v) - 2 * discordant(u, v);
  const untied = (pairs - tx.pairs) * (pairs - ty.pairs);
  const tau = untied > 0 ? s / Math.sqrt(untied) : NaN;
  const varianceS =
    kendallVariance(n, tx, ty) +
    (2 * tx.pairs * ty.pairs) / (n * (n - 1)) +
    (n > 2 ? (tx.triples * ty.triples) / (9 * n * (n - 1) * (n - 2)) : 0);
  const z = untied > 0 ? s / Math.sqrt(varianceS) : NaN;
  return { n, missing, tau, s, varianceS, z, p: 2 * normal.upper(Math.abs(z)) };
}

export interface TieSums {
  /** Σ t(t − 1)/2 over the groups of t equal values. */
  readonly pairs: number;
  /** Σ t(t − 1)(t − 2). */
  readonly triples: number;
  /** Σ t(t − 1)(2t + 5). */
  readonly spread: number;
}

/** What ties take from the variance of Kendall's S. */
export function tieSums(values: Float64Array): TieSums {
  const sorted = values.slice().sort();
  let [pairs, triples, spread] = [0, 0, 0];
  for (let from = 0, to = 0; from < sorted.length; from = to) {
    while (to < sorted.length && sorted[to] === sorted[from]) to++;
    const t = to - from;
    pairs += (t * (t - 1)) / 2;
    triples += t * (t - 1) * (t - 2);
    spread += t * (t - 1) * (2 * t + 5);
  }
  return { pairs, triples, spread };
}

/** The variance of Kendall's S over all orders, less what ties take (the leading terms of Kendall 1970, 4.3). */
export function kendallVariance(n: number, x: TieSums, y: TieSums): number {
  return (n * (n - 1) * (2 * n + 5) - x.spread - y.spread) / 18;
}

/** The places of the points by rising x, and by rising y where x is tied. */
function byBoth(x: Float64Array, y: Float64Array): Int32Array {
  return Int32Array.from(x.keys()).sort((a, b) => x[a] - x[b] || y[a] - y[b]);
}

/** Pairs that go opposite ways. */
function discordant(x: Float64Array, y: Float64Array): number {
  return inversions(Float64Array.from(byBoth(x, y), (row) => y[row]));
}

/** Pairs of points that are tied in both. */
function tiedTwice(x: Float64Array, y: Float64Array): number {
  let pairs = 0;
  let run = 0;
  byBoth(x, y).forEach((row, i, rows) => {
    run = i > 0 && x[row] === x[rows[i - 1]] && y[row] === y[rows[i - 1]] ? run + 1 : 0;
    pairs += run;
  });
  return pairs;
}

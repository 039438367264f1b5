import type { RandomTerm } from './design.ts';
import type { LocalTerm, RestTerm } from './layout.ts';

export interface RowLocalTerm extends LocalTerm {
  readonly term: RandomTerm;
  /** For each row of the data, where the row of its first coefficient starts in `zu`. */
  readonly inZu: Int32Array;
}

export interface RowRestTerm extends RestTerm {
  readonly term: RandomTerm;
  /** For each row of the data, the first of its columns among the crossed ones. */
  readonly columnOf: Int32Array;
}

interface Parts {
  readonly local: readonly RowLocalTerm[];
  readonly rest: readonly RowRestTerm[];
  readonly zu: Float64Array;
  readonly uu: Float64Array;
  readonly wide: number;
}

/** Z'Z of each cluster, one after the other. */
export function withinClusters(
  local: readonly RowLocalTerm[],
  size: Int32Array,
  zzStart: Int32Array,
  rows: number,
): Float64Array {
  const zz = new Float64Array(zzStart[size.length]);
  const at = new Int32Array(rows);
  for (const one of local) {
    const rowOf = one.term.codes;
    for (const [a, { values }] of one.term.coefficients.entries()) {
      const start = one.clusterOf.map((h, level) => zzStart[h] + (one.placeOf[level] + a) * size[h]);
      for (const { term, placeOf } of local) {
        const columnOf = term.codes;
        for (let i = 0; i < at.length; i++) at[i] = start[rowOf[i]] + placeOf[columnOf[i]];
        for (const [b, other] of term.coefficients.entries()) add(zz, at, b, values, other.values);
      }
    }
  }
  return zz;
}

/** The products of every random coefficient with the crossed ones, into `zu` and `uu`. */
export function acrossClusters({ local, rest, zu, uu, wide }: Parts): void {
  for (const two of rest) {
    for (const { term, inZu } of local) {
      const at = inZu.map((start, i) => start + two.columnOf[i]);
      addTerms(zu, at, wide, term, two.term);
    }
    for (const { term, columnOf } of rest) {
      const at = columnOf.map((row, i) => row * wide + two.columnOf[i]);
      addTerms(uu, at, wide, term, two.term);
    }
  }
}

/** The products of every random coefficient with one column of `[X | y]`, the one at `column` of U. */
export function addColumn({ local, rest, zu, uu, wide }: Parts, column: number, values: Float64Array): void {
  for (const { term, inZu } of local) {
    for (const [a, coefficient] of term.coefficients.entries())
      add(zu, inZu, a * wide + column, coefficient.values, values);
  }
  const products = new Float64Array(wide);
  for (const { term, columnOf } of rest) {
    for (const [a, coefficient] of term.coefficients.entries()) add(products, columnOf, a, coefficient.values, values);
  }
  for (let i = 0; i < wide; i++) uu[i * wide + column] = uu[column * wide + i] = products[i];
}

function addTerms(out: Float64Array, at: Int32Array, stride: number, one: RandomTerm, two: RandomTerm): void {
  for (const [a, { values }] of one.coefficients.entries()) {
    for (const [b, other] of two.coefficients.entries()) add(out, at, a * stride + b, values, other.values);
  }
}

/** Adds the product of two columns row by row, each row's to its own place; a column left out is all ones. */
function add(out: Float64Array, at: Int32Array, offset: number, one?: Float64Array, two?: Float64Array): void {
  if (one && two) for (let i = 0; i < at.length; i++) out[at[i] + offset] += one[i] * two[i];
  else {
    const values = one ?? two;
    if (values) for (let i = 0; i < at.length; i++) out[at[i] + offset] += values[i];
    else for (let i = 0; i < at.length; i++) out[at[i] + offset]++;
  }
}

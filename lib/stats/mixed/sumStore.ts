import { ExactSums } from '../exactSums.ts';
import type { Data } from './design.ts';
import { Levels, Values } from './levels.ts';
import { type SumSpec, sameSet, tablesOf } from './sumSpec.ts';

/** Whether a column holds numbers or text. */
export type Kinds = ReadonlyMap<string, 'number' | 'text'>;

/** A term: a product of numeric columns, one column of sums for each combination of the values of its text columns. */
export interface SumTerm {
  readonly name: string;
  readonly parts: readonly string[];
  readonly numbers: readonly string[];
  readonly levels: Levels;
  /** For each level, the place among all columns of sums. */
  readonly sumOf: number[];
}

/** The sums of one grouping: for each coefficient (`''` for an intercept, or a slope's column) and each column of sums, one a level. */
export interface SumTable {
  readonly levels: Levels;
  readonly coefficients: readonly string[];
  readonly terms: readonly SumTerm[];
  /** By coefficient, then by column of sums; nothing for columns that this table has no use for. */
  readonly sums: (ExactSums | undefined)[][];
}

/** Sizes whose products with each other lose nothing below the least double. */
const least = 1e-60;
const most = 1e60;
/** Categories beyond this cost too much, as each level of each group has a sum for each. */
const mostColumns = 400;

/**
 * The sums that a mixed model is fitted from, without its rows: every column of the model summed by each level of each
 * grouping, and the products of every two columns in all. Nothing in it rounds, so it doesn't matter in what order
 * rows come, or where they were added.
 */
export class SumStore {
  /** The first is 1, the last the response. */
  readonly terms: readonly SumTerm[];
  /** The first has all rows in one level. */
  readonly tables: readonly SumTable[];
  /** What each column of sums is of. */
  readonly columns: { readonly term: SumTerm; readonly level: number }[] = [];
  /** Sums of the products of two columns: of `a` and `b`, a ≥ b, at a (a + 1) / 2 + b. */
  products = new ExactSums();
  /** Rows left out for a missing cell. */
  missing = 0;
  readonly values = new Map<string, Values>();
  /** Every level comes after those it is in. */
  readonly levels: Levels[] = [];
  #settled = true;

  constructor(
    spec: SumSpec,
    readonly kinds: Kinds,
  ) {
    for (const name of ['', ...spec.terms].flatMap((term) => term.split(':')))
      if (kinds.get(name) === 'text') this.values.set(name, new Values());
    for (const name of spec.random.flatMap(({ by }) => by))
      if (!this.values.has(name)) this.values.set(name, new Values());
    this.terms = ['', ...spec.terms, spec.response].map((name) => this.#term(name));
    this.tables = tablesOf(spec).map(({ by, coefficients, terms }) => ({
      levels: this.#levelsOf(by),
      coefficients,
      terms: terms === 'all' ? this.terms : this.terms.filter(({ name }) => terms.includes(name)),
      sums: coefficients.map(() => []),
    }));
    this.#addColumns();
  }

  get n(): number {
    return this.tables[0].sums[0][0]!.at(0);
  }

  /** The table of a grouping, whatever the order of its columns. */
  table(by: readonly string[]): SumTable | undefined {
    return this.tables.find(({ levels }) => sameSet(levels.columns, by));
  }

  /** Adds some of the rows of a chunk. */
  add(data: Readonly<Record<string, Data>>, rows: Int32Array): void {
    // First of all, as they may be refused.
    const numbers = new Map<string, Float64Array>();
    for (const name of new Set(this.terms.flatMap((term) => term.numbers)))
      numbers.set(name, numbersOf(name, data[name] as Float64Array, rows));
    this.#settled = false;
    const codes = new Map(Array.from(this.values, ([name, values]) => [name, codesOf(values, data[name], rows)]));
    const levelOf = new Map<Levels, Int32Array>();
    for (const levels of this.levels) {
      const outer = levels.within && levelOf.get(levels.within)!;
      const last = codes.get(levels.columns[levels.columns.length - 1]);
      levelOf.set(
        levels,
        outer && last ? outer.map((at, i) => levels.level(at, last[i])) : new Int32Array(rows.length),
      );
    }
    this.#addColumns();
    const entries = new Map(
      this.terms.map((term) => [
        term,
        {
          sumOf: levelOf.get(term.levels)!.map((level) => term.sumOf[level]),
          values: term.numbers.map((name) => numbers.get(name)!).reduce<Float64Array | undefined>(times, undefined),
        },
      ]),
    );
    for (const { levels, coefficients, terms, sums } of this.tables) {
      const at = levelOf.get(levels)!;
      for (const [c, name] of coefficients.entries())
        for (const term of terms) addRows(sums[c], at, entries.get(term)!, numbers.get(name));
    }
    for (const [t, one] of this.terms.entries())
      for (const two of this.terms.slice(1, t + 1)) addPairs(this.products, entries.get(one)!, entries.get(two)!);
  }

  /** Adds the sums of another store of the same kind. */
  addAll(other: SumStore): void {
    this.#settled = false;
    this.missing += other.missing;
    const codes = new Map(
      Array.from(other.values, ([name, { met }]) => [name, met.map((value) => this.values.get(name)!.code(value))]),
    );
    const levelOf = new Map<Levels, Int32Array>();
    for (const [i, levels] of this.levels.entries()) {
      const { outer, codes: theirs } = other.levels[i];
      const within = levels.within && levelOf.get(levels.within)!;
      const code = codes.get(levels.columns[levels.columns.length - 1]);
      levelOf.set(
        levels,
        Int32Array.from(theirs, (each, level) => (within && code ? levels.level(within[outer[level]], code[each]) : 0)),
      );
    }
    this.#addColumns();
    const mine = other.columns.map(({ term, level }) => {
      const own = this.terms[other.terms.indexOf(term)];
      return own.sumOf[levelOf.get(own.levels)![level]];
    });
    for (const [t, { levels, sums }] of this.tables.entries())
      for (const [c, columns] of other.tables[t].sums.entries())
        for (const [column, theirs] of columns.entries())
          if (theirs) sums[c][mine[column]]!.addAll(theirs, levelOf.get(levels)!);
    this.products.addAll(
      other.products,
      Int32Array.from(pairs(mine.length), ([a, b]) => pair(mine[a], mine[b])),
    );
  }

  /** Puts everything in the order of the values: from here on only what was added tells, not when. */
  settle(): void {
    if (this.#settled) return;
    const codeOrder = new Map<string, Int32Array>();
    for (const [name, values] of this.values) {
      const order = values.order();
      codeOrder.set(name, order);
      this.values.set(name, new Values(Array.from(order, (code) => values.met[code])));
    }
    const orderOf = new Map<Levels, Int32Array>();
    for (const levels of this.levels) {
      const last = levels.columns[levels.columns.length - 1];
      const outer = levels.within && orderOf.get(levels.within)!;
      orderOf.set(levels, outer ? levels.settle(outer, codeOrder.get(last)!) : Int32Array.of(0));
    }
    const order = this.terms.flatMap(({ levels, sumOf }) => Array.from(orderOf.get(levels)!, (level) => sumOf[level]));
    for (const { levels, sums } of this.tables) {
      for (const [c, columns] of sums.entries()) {
        sums[c] = order.map((column) => columns[column]);
        for (const each of columns) each?.settle(orderOf.get(levels)!);
      }
    }
    this.#orderColumns();
    this.products.settle(Int32Array.from(pairs(order.length), ([a, b]) => pair(order[a], order[b])));
    this.#settled = true;
  }

  /** Every column of sums and the products, one after the other. */
  *allSums(): Generator<ExactSums> {
    for (const { sums } of this.tables) for (const columns of sums) for (const each of columns) if (each) yield each;
    yield this.products;
  }

  /** Fills a new store with sums that were settled, in the order of `allSums`. */
  fill(sums: Iterator<ExactSums>): void {
    for (const { sums: own } of this.tables) for (const columns of own) columns.length = 0;
    this.#orderColumns();
    for (const { sums: own } of this.tables)
      for (const columns of own)
        for (const [column, each] of columns.entries()) if (each) columns[column] = sums.next().value;
    this.products = sums.next().value;
  }

  #term(name: string): SumTerm {
    const parts = name === '' ? [] : name.split(':');
    const text = parts.filter((part) => this.kinds.get(part) === 'text');
    const numbers = parts.filter((part) => this.kinds.get(part) === 'number');
    return { name, parts, numbers, levels: this.#levelsOf(text), sumOf: [] };
  }

  #levelsOf(columns: readonly string[]): Levels {
    const known = this.levels.find((each) => each.columns.join('\0') === columns.join('\0'));
    if (known) return known;
    const levels = new Levels(columns, columns.length > 0 ? this.#levelsOf(columns.slice(0, -1)) : undefined);
    this.levels.push(levels);
    return levels;
  }

  /** Numbers the columns of sums afresh, term after term, level after level. */
  #orderColumns(): void {
    this.columns.length = 0;
    for (const term of this.terms) term.sumOf.length = 0;
    this.#addColumns();
  }

  /** Gives every level of a term its column of sums, and every level of a table its place in each. */
  #addColumns(): void {
    for (const term of this.terms)
      for (let level = term.sumOf.length; level < term.levels.size; level++)
        term.sumOf.push(this.columns.push({ term, level }) - 1);
    if (this.columns.length > mostColumns)
      throw new TypeError(
        `The terms have ${this.columns.length} columns, one for each category; sums can be kept of ${mostColumns}. Put rare categories together`,
      );
    for (const { levels, terms, sums } of this.tables) {
      for (const columns of sums) {
        for (const [column, { term }] of this.columns.entries()) {
          if (!terms.includes(term)) continue;
          columns[column] ??= new ExactSums();
          columns[column].grow(levels.size);
        }
      }
    }
    this.products.grow(pair(this.columns.length, 0));
  }
}

/** Where the product of two columns lies. */
export function pair(a: number, b: number): number {
  return a < b ? (b * (b + 1)) / 2 + a : (a * (a + 1)) / 2 + b;
}

function* pairs(count: number): Generator<[number, number]> {
  for (let a = 0; a < count; a++) for (let b = 0; b <= a; b++) yield [a, b];
}

function codesOf(values: Values, data: Data, rows: Int32Array): Int32Array {
  const codes = new Int32Array(rows.length);
  let [last, code]: [number | string | undefined, number] = [undefined, -1];
  for (let i = 0; i < rows.length; i++) {
    const value = data[rows[i]];
    // Rows of one group often lie together.
    if (value !== last) [last, code] = [value, values.code(value)];
    codes[i] = code;
  }
  return codes;
}

function numbersOf(name: string, data: Float64Array, rows: Int32Array): Float64Array {
  const numbers = new Float64Array(rows.length);
  for (let i = 0; i < rows.length; i++) {
    const size = Math.abs(data[rows[i]]);
    if (size !== 0 && !(size > least && size < most))
      throw new RangeError(
        `${name} is ${data[rows[i]]} in row ${rows[i]}; sums can be kept of 0 and of sizes from ${least} to ${most}`,
      );
    numbers[i] = data[rows[i]];
  }
  return numbers;
}

function times(one: Float64Array | undefined, two: Float64Array): Float64Array {
  return one ? one.map((value, i) => value * two[i]) : two;
}

/** For each row its column of sums, and its value in it; 1 where left out. */
interface Entries {
  readonly sumOf: Int32Array;
  readonly values?: Float64Array;
}

function addRows(
  sums: (ExactSums | undefined)[],
  at: Int32Array,
  { sumOf, values }: Entries,
  weights?: Float64Array,
): void {
  if (values && weights) for (let i = 0; i < at.length; i++) sums[sumOf[i]]!.addProduct(at[i], values[i], weights[i]);
  else {
    const one = values ?? weights;
    for (let i = 0; i < at.length; i++) sums[sumOf[i]]!.add(at[i], one ? one[i] : 1);
  }
}

function addPairs(products: ExactSums, one: Entries, two: Entries): void {
  for (let i = 0; i < one.sumOf.length; i++) {
    const at = pair(one.sumOf[i], two.sumOf[i]);
    if (one.values && two.values) products.addProduct(at, one.values[i], two.values[i]);
    else products.add(at, one.values?.[i] ?? two.values?.[i] ?? 1);
  }
}

import { blocksOfSums } from './blocksOfSums.ts';
import { completeRows, type Data } from './design.ts';
import { checkRows, solve } from './fit.ts';
import { describe, type FittedModel } from './fittedModel.ts';
import type { MixedModelSpec } from './mixedModel.ts';
import { readSums, writeSums } from './savedSums.ts';
import { columnsOf, type ModelSumsSpec, outermost, type SumSpec, sameSet, sumSpecOf } from './sumSpec.ts';
import { type Kinds, SumStore } from './sumStore.ts';

/**
 * The sums that a mixed model is fitted from, without its rows: for tables larger than the memory, and for tables that lie on
 * several machines. Rows are added a chunk at a time, sums of other rows are merged in, and `fit` gives what `mixedModel`
 * gives of all rows together.
 *
 * Nothing is rounded on the way (`ExactSums`): the bytes that `save` gives, and every bit of a fit, depend on the rows
 * alone and not on their order, on the chunks, or on who added which. The memory depends on the levels of the
 * random terms and on the columns of the fixed ones, not on the number of rows: with horses and their feet as groups,
 * a million rows take no more than a hundred thousand. Where a grouping has a level for every few rows, it grows with these.
 *
 * A fit agrees with `mixedModel` to about ten digits. Columns whose mean is far larger than their spread cost no digits, and
 * collinear ones no more than there. A number that isn't 0 must be between 1e-60 and 1e60 in size.
 *
 * @param spec  as for `mixedModel`, with all random terms nested in one of them by their columns: `['horse']`, then
 *   `['horse', 'limb']`; `parted` names columns whose means by that outermost group are known only at the end
 * @throws TypeError where random terms cross each other with none around them
 * @example new ModelSums({ response: 'Reaction', fixed: ['Days'], random: [{ by: ['Subject'] }] }).add(sleepstudy).fit().fixed[1].estimate // 10.467…
 */
export class ModelSums {
  readonly spec: ModelSumsSpec;
  readonly #sums: SumSpec;
  readonly #group: readonly string[];
  #store: SumStore | undefined;

  constructor(spec: ModelSumsSpec) {
    const { response, fixed, random, parted = [], method } = spec;
    // In one order, so that the bytes don't depend on how the model was written down.
    this.spec = {
      response,
      fixed,
      random: random.map(({ by, slopes, correlated }) => ({ by, slopes, correlated })),
      parted: parted.map(({ column, within, mean }) => ({ column, within, mean })),
      method,
    };
    this.#sums = sumSpecOf(this.spec);
    this.#group = outermost(random);
    const parts = new Set(parted.flatMap(({ within, mean }) => [within, mean]));
    for (const term of fixed)
      if (term.includes(':') && term.split(':').some((part) => parts.has(part)))
        throw new TypeError(`${term} multiplies a parted column; sums can be kept of such a column by itself alone`);
  }

  /** Rows that were added and are complete. */
  get n(): number {
    return this.#store?.n ?? 0;
  }

  /** Rows that were added and left out for a missing cell. */
  get missing(): number {
    return this.#store?.missing ?? 0;
  }

  /**
   * How many combinations of some columns' values there are in the rows.
   * @param columns  those of a random term or of a fixed one
   * @throws TypeError where these columns make no term
   */
  levels(columns: readonly string[]): number {
    const found = this.#store?.levels.find((each) => sameSet(each.columns, columns));
    if (this.#store && !found) throw new TypeError(`No sums are kept by ${columns.join(' and ')}`);
    return found?.size ?? 0;
  }

  /** The values that a column of categories or groups has in the rows. */
  values(column: string): readonly (number | string)[] {
    return this.#store?.values.get(column)?.met ?? [];
  }

  /**
   * Adds rows, in any order and in chunks of any size.
   * @param columns  numbers (`NaN` for missing) and categories (`''` for missing), all of one length; each column of the same kind
   *   every time. Rows with a missing cell in a column that the model names are left out and counted
   * @returns itself
   * @throws TypeError for a column that isn't there or is of the wrong kind; RangeError for a number too large or too small
   */
  add(columns: Readonly<Record<string, Data>>): this {
    const names = columnsOf(this.#sums);
    const data = names.map((name) => {
      if (!Object.hasOwn(columns, name))
        throw new TypeError(`The model names ${name}; the data has ${Object.keys(columns).join(', ')}`);
      return columns[name];
    });
    const store = this.#open(
      new Map(data.map((values, i) => [names[i], values instanceof Float64Array ? 'number' : 'text'])),
    );
    const total = data[0].length;
    const rows = completeRows(data, total);
    store.add(columns, rows);
    store.missing += total - rows.length;
    return this;
  }

  /**
   * Adds what was added to others, which stay as they are.
   * @returns itself
   * @throws TypeError where the others are of another model, or hold columns of another kind
   */
  merge(other: ModelSums): this {
    const [mine, theirs] = [this.spec, other.spec].map((spec) => JSON.stringify(spec));
    if (mine !== theirs) throw new TypeError(`These are sums of ${mine}; those of ${theirs} can't be added to them`);
    if (other === this) throw new TypeError('These are the same sums; merged, every row would count twice');
    if (other.#store) this.#open(other.#store.kinds).addAll(other.#store);
    return this;
  }

  /**
   * The model fitted to all rows that were added.
   * @param change  another method, or fewer terms: any whose sums were kept
   * @returns as of `mixedModel`, without what only rows can tell (fitted values, residuals)
   * @throws TypeError where no sums of a term were kept, or there are fewer rows than terms
   */
  fit(change: Partial<Pick<MixedModelSpec, 'fixed' | 'random' | 'method'>> = {}): FittedModel {
    const { fixed, random, method = 'REML', parted = [] } = { ...this.spec, ...change };
    if (!this.#store) throw new TypeError('No rows were added yet; a model needs more rows than terms');
    outermost(random);
    const { shape, blocks } = blocksOfSums(this.#store, { fixed, random, parted, group: this.#group });
    checkRows(shape);
    return describe(solve(shape, blocks, method));
  }

  /** The sums as bytes, for `load` here or elsewhere: the same bytes for the same rows. */
  save(): Uint8Array {
    return writeSums(this.spec, this.#store);
  }

  /**
   * Sums from the bytes that `save` gave.
   * @throws TypeError where they aren't such bytes
   */
  static load(bytes: Uint8Array): ModelSums {
    const { spec, store } = readSums(bytes);
    const sums = new ModelSums(spec);
    sums.#store = store;
    return sums;
  }

  #open(kinds: Kinds): SumStore {
    for (const name of this.#sums.numbers)
      if (kinds.get(name) !== 'number') throw new TypeError(`${name} must be numeric here, and it holds text`);
    this.#store ??= new SumStore(this.#sums, kinds);
    for (const [name, kind] of kinds) {
      const known = this.#store.kinds.get(name);
      if (known !== kind) throw new TypeError(`${name} holds ${kind} here and held ${known} before`);
    }
    return this.#store;
  }
}

import type { Columns } from '../sheet/column.ts';
import { plainTable } from '../sheet/plainTable.ts';
import type { Table } from '../sheet/table.ts';
import { beheaded, headed } from '../stats/headed.ts';
import { ModelSums, type ModelSumsSpec, type RandomSpec, weightedQuantile } from '../stats/index.ts';
import {
  chooseMoments,
  type IntervalData,
  type IntervalQuestion,
  type IntervalRows,
  intervalRows,
  numbersAt,
} from './intervalData.ts';
import { horseTerm, knownEnough, neverLonger, tooFew, tooManyTerms } from './intervalDesign.ts';
import { effectsOf, type IntervalEffects, type TooLittle } from './intervalModel.ts';
import { limbs as everyLimb } from './limbs.ts';
import { errorsBeyond } from './verdict.ts';

/** What may change along with the interval. */
export type Circumstance = 'season' | 'shod' | 'farrier';

export interface IntervalSumsOptions extends IntervalQuestion {
  /**
   * Circumstances that may enter as fixed terms; season and shoeing where left out. Whether they do is settled by the rows, as
   * in `intervalModel`. Each farrier becomes a term here, however many there are.
   */
  readonly circumstances?: readonly Circumstance[];
}

/** What sums of intervals say; it is the `asked` of the sentences too. */
export interface IntervalSumsFit
  extends IntervalEffects,
    Pick<IntervalData, 'outcome' | 'unit' | 'size' | 'compared' | 'leftOut'> {
  readonly kind: 'fitted';
  readonly horses: number;
  readonly feet: number;
}

/** Rows that compare the same moments and lack the same circumstances: which of them enter the model is known only at the end. */
interface Part {
  readonly compared: string;
  readonly unknown: readonly Circumstance[];
  readonly sums: ModelSums;
  /** How many changes have which standard error, to three digits. */
  readonly errors: Map<number, number>;
}

/** What stands in front of saved sums. */
interface Head {
  readonly format: string;
  readonly options: IntervalSumsOptions;
  readonly unit?: string;
  readonly leftOut: IntervalRows['leftOut'];
  readonly parts: readonly (Pick<Part, 'compared' | 'unknown'> & {
    readonly errors: readonly (readonly [number, number])[];
    readonly bytes: number;
  })[];
}

const format = 'interval-sums-1';
const everyCircumstance: readonly Circumstance[] = ['season', 'shod', 'farrier'];
/** Stands for a circumstance that isn't known, in rows that no model with that circumstance is fitted to. */
const unknownWord = 'unknown';
const groups: readonly RandomSpec[] = [{ by: ['horse', 'interval'] }, { by: ['horse', 'limb'] }];

/**
 * Does a longer interval cost balance, asked of a registry: the question of `intervalModel` for tables that are too large for
 * the memory or lie in several places. Tables of intervals are added one after the other and not kept; sums from elsewhere are
 * merged in; the answer is that of `intervalModel` of all rows together, without what needs the single rows (the checks, the fitted
 * values). Nothing rounds on the way (`ModelSums`): the same rows give the same bytes and the same answer to the last bit,
 * in whatever order and by whomever they were added. The memory grows with horses, feet and the intervals of horses.
 * @param options  which outcome, signed or as a size, of which feet, and which circumstances
 * @source Van de Pol & Wright 2009, Animal Behaviour 77:753–758, for what lies within a horse and between horses
 */
export class IntervalSums {
  readonly options: Required<Omit<IntervalSumsOptions, 'limbs'>> & Pick<IntervalSumsOptions, 'limbs'>;
  readonly #parts = new Map<string, Part>();
  readonly #leftOut = { unmeasured: 0, therapeutic: 0 };
  #unit: string | undefined;

  constructor({ outcome, size = false, limbs, circumstances = ['season', 'shod'] }: IntervalSumsOptions) {
    // In one order, so that the bytes don't depend on how the question was written down.
    this.options = {
      ...{ outcome, size },
      limbs: limbs && everyLimb.filter((limb) => limbs.includes(limb)),
      circumstances: everyCircumstance.filter((name) => circumstances.includes(name)),
    };
  }

  /**
   * Adds a table of intervals, or some of its rows; all of a horse's rows need not come together.
   * @param table  a sheet that `intervalSheet` gives, or columns like those of a written `intervals.csv`, dates as days
   * @returns itself
   * @throws TypeError where a column is missing or of another kind, or the outcome has another unit than before
   */
  add(table: Table | Columns): this {
    const rows = intervalRows(isTable(table) ? table : plainTable(table), this.options);
    if (rows.horse.length > 0) this.#settleUnit(rows.unit);
    this.#leftOut.unmeasured += rows.leftOut.unmeasured;
    this.#leftOut.therapeutic += rows.leftOut.therapeutic;
    const { circumstances } = this.options;
    const places = new Map<string, number[]>();
    for (let row = 0; row < rows.horse.length; row++) {
      const unknown = circumstances.filter((name) => rows[name][row] === '');
      const key = keyOf(rows.compared[row], unknown);
      const known = places.get(key);
      if (known) known.push(row);
      else places.set(key, [row]);
    }
    for (const [key, some] of places) {
      const unknown = circumstances.filter((name) => rows[name][some[0]] === '');
      const { sums, errors } = this.#part(key, rows.compared[some[0]], unknown);
      sums.add(columnsOf(rows, some, circumstances));
      for (const row of some) {
        const error = Number(rows.changeError[row].toPrecision(3));
        if (!Number.isNaN(error)) errors.set(error, (errors.get(error) ?? 0) + 1);
      }
    }
    return this;
  }

  /**
   * Adds what was added to others, which stay as they are.
   * @returns itself
   * @throws TypeError where the others ask another question
   */
  merge(other: IntervalSums): this {
    const [mine, theirs] = [this.options, other.options].map((options) => JSON.stringify(options));
    if (mine !== theirs) throw new TypeError(`These are sums of ${mine}; those of ${theirs} can't be added to them`);
    if (other === this) throw new TypeError('These are the same sums; merged, every row would count twice');
    this.#settleUnit(other.#unit);
    this.#leftOut.unmeasured += other.#leftOut.unmeasured;
    this.#leftOut.therapeutic += other.#leftOut.therapeutic;
    for (const [key, { compared, unknown, sums, errors }] of other.#parts) {
      const part = this.#part(key, compared, unknown);
      part.sums.merge(sums);
      for (const [error, count] of errors) part.errors.set(error, (part.errors.get(error) ?? 0) + count);
    }
    return this;
  }

  /**
   * What all rows say together.
   * @param options  whether every horse gets a slope of its own, around the common one; false where left out
   * @returns the effect of a week, in the words' own form: `effectSentence(answer, answer, units)`; or in words why there is too little
   */
  answer({ ownSlopes = false }: { readonly ownSlopes?: boolean } = {}): IntervalSumsFit | TooLittle {
    const counts = new Map<string, number>();
    for (const { compared, sums } of this.#parts.values()) counts.set(compared, (counts.get(compared) ?? 0) + sums.n);
    const compared = chooseMoments(counts);
    const all = counts.get(compared) ?? 0;
    const parts = [...this.#parts.values()].filter((part) => part.compared === compared);
    const valuesIn = (some: readonly Part[], name: Circumstance) =>
      new Set(some.filter(({ unknown }) => !unknown.includes(name)).flatMap(({ sums }) => sums.values(name)));
    const circumstances = this.options.circumstances.filter((name) => valuesIn(parts, name).size > 1);
    const known = circumstances.filter(
      (name) => rowsOf(parts.filter(({ unknown }) => !unknown.includes(name))) >= knownEnough * all,
    );
    const kept = parts.filter(({ unknown }) => !unknown.some((name) => known.includes(name)));
    const sums = kept.length === 1 ? kept[0].sums : this.#together(kept);

    const n = sums.n;
    const [horses, feet, visits] = [['horse'], ['horse', 'limb'], ['horse', 'interval']].map((by) => sums.levels(by));
    const few = tooFew(n, horses);
    if (few) return { kind: 'too little', reason: few };
    const varied = known.filter((name) => valuesIn(kept, name).size > 1);
    const categories = [...(sums.values('limb').length > 1 ? ['limb'] : []), ...varied];
    const fixed = ['interval_within', 'interval_mean', ...categories];
    const many = tooManyTerms(n, 3 + categories.reduce((sum, name) => sum + sums.values(name).length - 1, 0));
    if (many) {
      const { dropped } = sums.fit({ fixed: ['interval_within'], random: [horseTerm(false)] });
      return { kind: 'too little', reason: dropped.length > 0 ? neverLonger() : many };
    }
    const random = [
      ...(visits < n ? [groups[0]] : []),
      ...(feet < n && feet > horses ? [groups[1]] : []),
      horseTerm(ownSlopes),
    ];
    const model = sums.fit({ fixed, random });
    if (model.dropped.includes('interval_within')) return { kind: 'too little', reason: neverLonger() };
    const design: IntervalEffects['design'] = {
      // Where all horses have the same mean it is no term.
      fixed: fixed.filter((name) => name !== 'interval_mean' || !model.dropped.includes(name)),
      random,
      notKnown: circumstances.filter((name) => !known.includes(name)),
      farrierAs: varied.includes('farrier') ? 'fixed' : 'not in the model',
    };
    const { outcome, size } = this.options;
    return {
      kind: 'fitted',
      ...effectsOf(model, { ...design, missing: all - n }, errorsBeyond * medianOf(kept)),
      ...{ outcome, size, unit: this.#unit!, compared, horses, feet },
      leftOut: { ...this.#leftOut, otherMoments: rowsOf([...this.#parts.values()]) - all },
    };
  }

  /** The sums as bytes, for `load` here or elsewhere: the same bytes for the same rows. */
  save(): Uint8Array {
    const parts = [...this.#parts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, part]) => part);
    const bodies = parts.map(({ sums }) => sums.save());
    const head: Head = {
      ...{ format, options: this.options, unit: this.#unit, leftOut: this.#leftOut },
      parts: parts.map(({ compared, unknown, errors }, i) => ({
        ...{ compared, unknown, bytes: bodies[i].length },
        errors: [...errors].sort(([a], [b]) => a - b),
      })),
    };
    return headed(head, bodies);
  }

  /**
   * Sums from the bytes that `save` gave.
   * @throws TypeError where they aren't such bytes
   */
  static load(bytes: Uint8Array): IntervalSums {
    const { head, body } = beheaded<Head>(bytes, format, ({ parts }) =>
      parts.reduce((sum, part) => sum + part.bytes, 0),
    );
    const sums = new IntervalSums(head.options);
    sums.#unit = head.unit;
    Object.assign(sums.#leftOut, head.leftOut);
    let at = 0;
    for (const { compared, unknown, errors, bytes: length } of head.parts) {
      const loaded = ModelSums.load(body.subarray(at, at + length));
      sums.#parts.set(keyOf(compared, unknown), { compared, unknown, sums: loaded, errors: new Map(errors) });
      at += length;
    }
    return sums;
  }

  #part(key: string, compared: string, unknown: readonly Circumstance[]): Part {
    const known = this.#parts.get(key);
    if (known) return known;
    const part = { compared, unknown, sums: new ModelSums(specOf(this.options.circumstances)), errors: new Map() };
    this.#parts.set(key, part);
    return part;
  }

  #together(parts: readonly Part[]): ModelSums {
    const sums = new ModelSums(specOf(this.options.circumstances));
    for (const part of parts) sums.merge(part.sums);
    return sums;
  }

  #settleUnit(unit: string | undefined): void {
    if (this.#unit !== undefined && unit !== undefined && unit !== this.#unit)
      throw new TypeError(`${this.options.outcome} is in ${unit} here and was in ${this.#unit} before`);
    this.#unit ??= unit;
  }
}

function specOf(circumstances: readonly Circumstance[]): ModelSumsSpec {
  return {
    response: 'change',
    fixed: ['interval_within', 'interval_mean', 'limb', ...circumstances],
    random: [...groups, horseTerm(true)],
    parted: [{ column: 'weeks', within: 'interval_within', mean: 'interval_mean' }],
  };
}

/** Some rows as the columns of the model, with a number for each pair of days. */
function columnsOf(rows: IntervalRows, some: readonly number[], circumstances: readonly Circumstance[]) {
  const [start, end] = [rows.start, rows.end].map((days) => numbersAt(days, some));
  const words = (values: readonly string[]) => some.map((row) => values[row]);
  return {
    horse: words(rows.horse),
    limb: words(rows.limb),
    interval: start.map((day, i) => day * 2 ** 20 + end[i] - day),
    weeks: start.map((day, i) => (end[i] - day) / 7),
    change: numbersAt(rows.change, some),
    ...Object.fromEntries(circumstances.map((name) => [name, some.map((row) => rows[name][row] || unknownWord)])),
  };
}

function keyOf(compared: string, unknown: readonly Circumstance[]): string {
  return [compared, ...unknown].join('\0');
}

function isTable(table: Table | Columns): table is Table {
  return typeof table.column === 'function';
}

function rowsOf(parts: readonly Part[]): number {
  return parts.reduce((total, { sums }) => total + sums.n, 0);
}

function medianOf(parts: readonly Part[]): number {
  const errors = parts.flatMap((part) => [...part.errors]);
  return weightedQuantile(
    errors.map(([error]) => error),
    errors.map(([, count]) => count),
    0.5,
  );
}

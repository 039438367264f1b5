import type { NumberColumn } from './column.ts';
import type { Formula } from './fitFormulas.ts';

/** Where a column's errors come from. */
export interface Errors {
  /** Whether they are there without much work. */
  readonly ready: () => boolean;
  readonly values: () => Float64Array | undefined;
}

/** A computed column of numbers; its errors are worked out when first asked for. */
export class ComputedColumn implements NumberColumn {
  readonly kind: NumberColumn['kind'];
  readonly unit: string;
  #error: { readonly values: Float64Array | undefined } | undefined;

  constructor(
    formula: Formula,
    readonly values: Float64Array,
    readonly errors: Errors,
  ) {
    this.kind = formula.kind as NumberColumn['kind'];
    this.unit = formula.unit;
  }

  /** There where all measured columns that it rests on have errors; a yes/no has none. */
  get error(): Float64Array | undefined {
    if (this.kind === 'boolean') return undefined;
    this.#error ??= { values: this.errors.values() };
    return this.#error.values;
  }
}

import type { Column } from '../column.ts';

/** Some rows changed. Of a column `before` is what stood there, of text its code, and a row is named once. */
export interface Delta {
  readonly rows: ArrayLike<number>;
  readonly before: ArrayLike<number>;
}

/** What became of a stage since those that need it last looked. */
export type Changes = 'none' | 'all' | Delta;

let made = 0;

/**
 * A step on the way from what was typed in to what is shown, kept up to date: a column, the groups of some keys, the
 * running sums of a column by groups. Stages are refreshed in an order in which each comes after all that it needs.
 */
export abstract class Stage {
  /** No other stage has it. */
  readonly id = ++made;
  /** Told by the last refresh. */
  changes: Changes = 'all';
  /** Not yet computed. */
  fresh = true;

  /** @param needs  the stages it is made from */
  constructor(readonly needs: readonly Stage[]) {}

  /** Nothing has changed that it is made from. */
  get idle(): boolean {
    return !this.fresh && this.needs.every(({ changes }) => changes === 'none');
  }

  /** Brings itself up to date after what its needs say, and says which of its own rows (or groups) changed. */
  abstract refresh(): Changes;
}

/** A stage that has a value for each row. */
export abstract class ColumnStage extends Stage {
  abstract readonly column: Column;
}

/** The numbers of a column as running sums and orders see them: of text, codes with `NaN` for missing. */
export function numbersOf(column: Column): Float64Array {
  if (column.kind !== 'text') return column.values;
  return Float64Array.from(column.codes, (code) => (code < 0 ? Number.NaN : code));
}

/** A value of a `Delta` as such a number. */
export function numberBefore(column: Column, before: number): number {
  return column.kind === 'text' && before < 0 ? Number.NaN : before;
}

/** Collects the rows that really changed. */
export class DeltaBuilder {
  readonly #rows: number[] = [];
  readonly #before: number[] = [];

  add(row: number, before: number): void {
    this.#rows.push(row);
    this.#before.push(before);
  }

  get changes(): Changes {
    return this.#rows.length === 0 ? 'none' : { rows: this.#rows, before: this.#before };
  }
}

/** Whether so many rows changed that going through every row is quicker. */
export function many(changed: number, rows: number): boolean {
  return changed > rows / 16;
}

/**
 * The rows in which any of some stages changed, each once; `'all'` where they are many.
 * @param rows  how many rows there are
 */
export function changedRows(stages: readonly Stage[], rows: number): 'all' | readonly number[] {
  const changed = new Set<number>();
  for (const { changes } of stages) {
    if (changes === 'none') continue;
    if (changes === 'all' || many(changes.rows.length, rows)) return 'all';
    for (let i = 0; i < changes.rows.length; i++) changed.add(changes.rows[i]);
  }
  return many(changed.size, rows) ? 'all' : [...changed];
}

import type { Column } from '../sheet/column.ts';
import { type CodedCells, codedCells, textCell } from './codedCells.ts';
import { longestNumber, putNumber } from './putNumber.ts';

const LF = 10;
const COMMA = 44;

/** Writes the rows of a table into one piece of memory after the other. */
export class RowWriter {
  /** The most bytes that one row takes. */
  readonly longestRow: number;
  /** The row, in the order of writing, that comes next. */
  next = 0;
  readonly #numbers: readonly (Float64Array | undefined)[];
  readonly #coded: readonly (CodedCells | undefined)[];
  readonly #entered: readonly ReadonlyMap<number, Uint8Array>[];
  readonly #missing: Uint8Array;

  /**
   * @param entered  for each column the texts to write where a row has no value
   * @param order  the rows to write; all, as they stand, where left out
   */
  constructor(
    columns: readonly Column[],
    entered: readonly (ReadonlyMap<number, string> | undefined)[],
    readonly rows: number,
    readonly order: ArrayLike<number> | undefined,
  ) {
    const encoder = new TextEncoder();
    this.#numbers = columns.map((column) => (column.kind === 'number' ? column.values : undefined));
    this.#coded = columns.map((column) => (column.kind === 'number' ? undefined : codedCells(column)));
    this.#entered = entered.map(
      (texts) => new Map(Array.from(texts ?? [], ([row, text]) => [row, encoder.encode(textCell(text))])),
    );
    // Alone in its row, a missing cell would leave an empty line, which is no row.
    this.#missing = encoder.encode(columns.length === 1 ? '""' : '');
    this.longestRow = columns.reduce((sum, _, c) => sum + 1 + longestCell(this.#coded[c], this.#entered[c]), 0);
  }

  /** Fills `chunk` with whole rows, as many as surely fit; returns how many bytes they take. */
  fill(chunk: Uint8Array): number {
    const numbers = this.#numbers;
    const coded = this.#coded;
    const { rows, order } = this;
    const last = chunk.length - this.longestRow;
    let i = this.next;
    let at = 0;
    for (; i < rows && at <= last; i++) {
      const row = order === undefined ? i : order[i];
      for (let c = 0; c < numbers.length; c++) {
        const values = numbers[c];
        if (values !== undefined) {
          const value = values[row];
          at = Number.isFinite(value) ? putNumber(value, chunk, at) : this.#putMissing(c, row, chunk, at);
        } else {
          const { codes, pool, ends } = coded[c]!;
          const code = codes[row];
          if (code < 0) at = this.#putMissing(c, row, chunk, at);
          else for (let from = ends[code], to = ends[code + 1]; from < to; from++) chunk[at++] = pool[from];
        }
        chunk[at++] = COMMA;
      }
      chunk[at - 1] = LF;
    }
    this.next = i;
    return at;
  }

  #putMissing(column: number, row: number, chunk: Uint8Array, at: number): number {
    const cell = this.#entered[column].get(row) ?? this.#missing;
    chunk.set(cell, at);
    return at + cell.length;
  }
}

function longestCell(coded: CodedCells | undefined, entered: ReadonlyMap<number, Uint8Array>): number {
  let longest = longestNumber;
  if (coded)
    for (let code = 1; code < coded.ends.length; code++)
      longest = Math.max(longest, coded.ends[code] - coded.ends[code - 1]);
  for (const { length } of entered.values()) longest = Math.max(longest, length);
  return longest;
}

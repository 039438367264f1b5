import { type Column, TextColumn } from '../sheet/column.ts';
import { isoFromDays } from '../sheet/days.ts';
import { guard } from './guard.ts';
import { looksLikeValue, needsQuotes } from './quoting.ts';

/** Cells that are written as texts: for each row a code, and for each code the bytes to write. */
export interface CodedCells {
  /** -1 for missing. */
  readonly codes: Int32Array;
  /** Code `c` is written as `pool` from `ends[c]` to `ends[c + 1]`. */
  readonly pool: Uint8Array;
  readonly ends: Int32Array;
}

/**
 * A text as a cell: with an apostrophe where a spreadsheet would run it, in quotes where it needs them or where it could be
 * taken for a number, a date, yes or no, or missing.
 * @example textCell('say "no"') // '"say ""no"""'
 */
export function textCell(text: string): string {
  const safe = guard(text);
  return needsQuotes(safe) || looksLikeValue(safe) ? quoted(safe) : safe;
}

/** A column's name as a cell of the heading row, which holds nothing but texts. */
export function headingCell(name: string): string {
  const safe = guard(name);
  return needsQuotes(safe) ? quoted(safe) : safe;
}

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** A column of texts, dates or booleans as bytes to copy. */
export function codedCells(column: Column): CodedCells {
  if (column instanceof TextColumn) return { codes: column.codes, ...pooled(column.levels.map(textCell)) };
  const known = new Map<number, number>();
  const { values } = column;
  const codes = new Int32Array(values.length).fill(-1);
  for (let row = 0; row < values.length; row++) {
    const value = values[row];
    if (!Number.isFinite(value)) continue;
    // Dates come in runs, and a look back is quicker than a look-up.
    if (row > 0 && value === values[row - 1]) {
      codes[row] = codes[row - 1];
      continue;
    }
    let code = known.get(value);
    if (code === undefined) {
      code = known.size;
      known.set(value, code);
    }
    codes[row] = code;
  }
  return { codes, ...pooled([...known.keys()].map(column.kind === 'date' ? isoDate : trueOrFalse)) };
}

function pooled(texts: readonly string[]): { pool: Uint8Array; ends: Int32Array } {
  const encoder = new TextEncoder();
  const ends = new Int32Array(texts.length + 1);
  let pool = new Uint8Array(texts.reduce((sum, { length }) => sum + length, 64));
  texts.forEach((text, code) => {
    const at = ends[code];
    // A UTF-16 unit takes three bytes at most.
    if (at + text.length * 3 > pool.length) {
      const longer = new Uint8Array((at + text.length * 3) * 2);
      longer.set(pool.subarray(0, at));
      pool = longer;
    }
    ends[code + 1] = at + encoder.encodeInto(text, pool.subarray(at)).written;
  });
  return { pool, ends };
}

function isoDate(days: number): string {
  // From 0000-01-01 to 9999-12-31.
  if (!Number.isInteger(days) || days < -719_528 || days > 2_932_896)
    throw new TypeError(
      `${days} is no whole number of days between the years 0 and 9999; it can't be written as a date`,
    );
  return isoFromDays(days);
}

function trueOrFalse(value: number): string {
  return value === 0 ? 'FALSE' : 'TRUE';
}

import { type Column, TextColumn } from '../../sheet/column.ts';
import { errorDigits, usualDigits, written } from '../../sheet/display.ts';
import { cellWord } from '../../words/cellWord.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';
import { typedNumber } from './editText.ts';
import type { ShownColumn } from './shownColumns.ts';

/** A cell as the reader sees it, without its unit, which stands in the heading. */
export interface CellText {
  /** `''` for a missing value; dates as ISO days; `yes` or `no`. */
  readonly value: string;
  /** The standard error in the same unit, `''` where it is unknown. */
  readonly error: string;
}

/**
 * The words of one cell; the decimals follow from the error where it is known, else from the unit. A typed cell stands as it
 * was typed.
 * @param bare without looking at errors, which are worked out for a whole column at once
 */
export function cellText(
  column: Column,
  row: number,
  { name, factor, shownUnit, whole, typed }: ShownColumn,
  bare = false,
): CellText {
  if (column instanceof TextColumn) return { value: cellWord(name, column.at(row)), error: '' };
  const inside = column.values[row];
  if (Number.isNaN(inside)) return { value: '', error: '' };
  if (column.kind === 'date') return { value: shownDay(inside), error: '' };
  if (column.kind === 'boolean') return { value: inside ? say`yes` : say`no`, error: '' };
  const value = inside * factor;
  if (typed) return { value: typedNumber(value, shownUnit, whole), error: '' };
  const error = (bare ? Number.NaN : (column.error?.[row] ?? Number.NaN)) * Math.abs(factor);
  if (!(error > 0)) return { value: written(value, whole ? 0 : usualDigits(shownUnit, value), false), error: '' };
  const digits = errorDigits(error);
  return { value: written(value, digits, false), error: written(error, digits, false) };
}

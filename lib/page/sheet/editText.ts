import { type Column, TextColumn } from '../../sheet/column.ts';
import { usualDigits } from '../../sheet/display.ts';
import { cellWord } from '../../words/cellWord.ts';
import { fixed } from '../../words/fixed.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';
import type { ShownColumn } from './shownColumns.ts';

/**
 * A cell as one would type it: a number in the reader's unit with all its digits, and without the tail that converting
 * between units leaves.
 * @returns `''` for a missing value
 */
export function editText(column: Column, row: number, { name, factor }: Pick<ShownColumn, 'name' | 'factor'>): string {
  if (column instanceof TextColumn) return cellWord(name, column.at(row));
  const value = column.values[row];
  if (Number.isNaN(value)) return '';
  if (column.kind === 'date') return shownDay(value);
  if (column.kind === 'boolean') return value ? say`yes` : say`no`;
  return String(Number((value * factor).toPrecision(10))).replace('.', say`.`);
}

/**
 * A typed number as it is shown: as it was typed, with no fewer decimals than its unit usually has, and no more than two
 * beyond, which only another unit would bring.
 */
export function typedNumber(value: number, shownUnit: string, whole: boolean): string {
  const usual = whole ? 0 : usualDigits(shownUnit, value);
  const exact = Number(value.toPrecision(10));
  const decimals = (String(exact).split('.')[1] ?? '').length;
  const digits = decimals <= usual + 2 ? Math.max(usual, decimals) : usual;
  return fixed(exact, digits).replace('-', '−');
}

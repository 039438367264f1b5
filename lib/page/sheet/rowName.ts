import { TextColumn } from '../../sheet/column.ts';
import type { Sheet } from '../../sheet/sheet.ts';
import { midSentence } from '../../words/midSentence.ts';
import { say } from '../../words/say.ts';
import { shownDay } from '../../words/shownDay.ts';

/**
 * Which row it is, in words, from the columns that tell rows apart.
 * @example rowName(feet, ['horse_id', 'limb', 'date'], 0) // 'Thistle, LF, 2025-09-11'
 */
export function rowName(table: Sheet, columns: readonly string[], row: number): string {
  const words = columns
    .filter((name) => table.names.includes(name))
    .map((name) => {
      const column = table.column(name);
      if (column instanceof TextColumn) return column.at(row);
      const value = column.values[row];
      return Number.isNaN(value)
        ? ''
        : column.kind === 'date'
          ? shownDay(value)
          : `${midSentence(table.describe(name).title)} ${value}`;
    })
    .filter((word) => word !== '');
  return words.join(', ') || say`a foot without a name yet`;
}

import { TextColumn } from '../../sheet/column.ts';
import { isoFromDays } from '../../sheet/days.ts';
import type { Sheet } from '../../sheet/sheet.ts';

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
          ? isoFromDays(value)
          : `${table.describe(name).title.toLowerCase()} ${value}`;
    })
    .filter((word) => word !== '');
  return words.join(', ') || 'a foot without a name yet';
}

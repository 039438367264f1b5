import type { Entered, JournalEntry, RowId } from './journal.ts';
import type { TableName } from './tables.ts';

/** One change of one cell: when, who, and from what to what. */
export interface PastCell {
  /** What the device's clock said, in milliseconds since 1970-01-01 UTC; it may have been wrong. */
  readonly at: number;
  /** `''` where they gave no name. */
  readonly who: string;
  /** What the whole change was, in words. */
  readonly words: string;
  readonly before: Entered;
  readonly after: Entered;
}

/** Where a cell is: its table, its row and its column. */
export interface CellPlace {
  readonly table: TableName;
  readonly row: RowId;
  readonly column: string;
}

/**
 * What was done to a cell, the first change first; nothing where it stands as it was opened.
 * @param journal  in order
 */
export function cellHistory(journal: readonly JournalEntry[], { table, row, column }: CellPlace): PastCell[] {
  return journal.flatMap(({ at, who, words, table: of, edits }) => {
    if (of !== table) return [];
    return edits.flatMap((edit): PastCell[] => {
      if (edit.kind === 'cells' && edit.column === column) {
        const i = edit.rows.indexOf(row);
        return i < 0 ? [] : [{ at, who, words, before: edit.before[i], after: edit.after[i] }];
      }
      if (edit.kind !== 'rows') return [];
      const i = edit.rows.indexOf(row);
      const cell = edit.columns.find((one) => one.column === column)?.cells[i] ?? null;
      if (i < 0 || cell === null) return [];
      const [before, after] = edit.how === 'add' ? [null, cell] : [cell, null];
      return [{ at, who, words, before, after }];
    });
  });
}

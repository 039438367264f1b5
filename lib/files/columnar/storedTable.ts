import type { ColumnInput } from '../../sheet/column.ts';
import type { ComputedDefinition } from '../../sheet/edits.ts';
import { say } from '../../words/say.ts';

/** A table out of a file that knows its columns' types. */
export interface StoredTable {
  /** All columns with their values, in order: those that were computed too. */
  readonly columns: Record<string, ColumnInput & { readonly title?: string }>;
  /** How columns were computed, where the file says so. */
  readonly computed: readonly ComputedDefinition[];
}

/** A file that can't be read as a table, in words for the reader. */
export class StoredTableError extends Error {
  override readonly name = 'StoredTableError';
}

/** Columns and formulas from what a file says of each column. */
export function storedTable(
  read: readonly { readonly name: string; readonly about: ReadonlyMap<string, string>; readonly column: ColumnInput }[],
  file: string,
): StoredTable {
  const columns: StoredTable['columns'] = Object.create(null);
  const computed: ComputedDefinition[] = [];
  for (const { name, about, column } of read) {
    if (Object.hasOwn(columns, name))
      throw new StoredTableError(say`${file} has two columns ${name}. Give one of them another name`);
    const [title, unit, formula] = ['title', 'unit', 'formula'].map((key) => about.get(key));
    const said = { ...(title && { title }), ...(unit && { unit }) };
    columns[name] = Object.assign(column, said);
    if (formula) computed.push({ name, formula, ...said });
  }
  return { columns, computed };
}

import { rowCount } from '../sheet/column.ts';
import { Contents } from './contents.ts';
import { newEntryId } from './entryId.ts';
import { mergeOf } from './merge.ts';
import { type MergeChoices, mergeEdits } from './mergeEdits.ts';
import type { KeptTable, TableName } from './tables.ts';

/**
 * Two tables of a kind made one: the rows of both, each once, and of every cell what was filled in or chosen.
 * @example mergedTable('feet', phone, desk, { cell: () => 'theirs' })
 */
export function mergedTable(name: TableName, ours: KeptTable, theirs: KeptTable, choices: MergeChoices): KeptTable {
  const contents = new Contents(name, ours);
  const entry = newEntryId();
  const rows = rowCount(ours.columns);
  const edits = mergeEdits(mergeOf(name, ours, theirs), ours, choices, {
    idAt: (row) => contents.idAt(row),
    newId: (nth) => `${entry}/${nth}`,
    last: rows === 0 ? null : contents.idAt(rows - 1),
  });
  contents.apply(edits);
  return contents.table();
}

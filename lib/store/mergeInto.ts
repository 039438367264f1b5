import { newEntryId } from './entryId.ts';
import { mergeOf } from './merge.ts';
import { type MergeChoices, mergeEdits } from './mergeEdits.ts';
import { TableRecord } from './tableRecord.ts';
import type { KeptTable, TableName } from './tables.ts';

/**
 * Merges a table into a record, as one change that can be taken back: the rows of both, each once, and of every cell what
 * was filled in or chosen.
 * @param words  what the history calls it: `merging phone.csv`
 */
export function mergeInto(
  record: TableRecord,
  name: TableName,
  theirs: KeptTable,
  choices: MergeChoices,
  words: string,
): void {
  const entry = newEntryId();
  const edits = mergeEdits(mergeOf(name, record.table(), theirs), record.own, choices, {
    idAt: (row) => record.idAt(row),
    newId: (nth) => `${entry}/${nth}`,
    last: record.rows === 0 ? null : record.idAt(record.rows - 1),
  });
  record.make(edits, words);
}

/**
 * Two tables of a kind made one.
 * @example mergedTable('feet', phone, desk, { cell: () => 'theirs' })
 */
export function mergedTable(name: TableName, ours: KeptTable, theirs: KeptTable, choices: MergeChoices): KeptTable {
  const record = new TableRecord(name, ours);
  mergeInto(record, name, theirs, choices, `merging ${theirs.file}`);
  return record.table();
}

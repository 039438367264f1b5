import { emptyRows } from '../hoof/emptyRows.ts';
import { type Column, TextColumn } from '../sheet/column.ts';
import { isoFromDays } from '../sheet/days.ts';
import { midSentence } from '../words/midSentence.ts';
import { say } from '../words/say.ts';
import type { ProblemLog } from './problemLog.ts';
import { repeatedRows } from './repeatedRows.ts';
import type { TableSchema } from './schemas.ts';

/** Tells of rows that lack what names them, and of rows that are named alike. */
export function logKeys(
  schema: TableSchema,
  columns: ReadonlyMap<string, Column>,
  rows: number,
  log: ProblemLog,
): void {
  logEmptyKeys(schema, columns, log);
  logRepeats(schema, columns, rows, log);
}

/** Rows that nothing can be made of, such as totals; a key that was entered and not understood is named already. */
function logEmptyKeys(schema: TableSchema, columns: ReadonlyMap<string, Column>, log: ProblemLog): void {
  for (const { name, title } of schema.columns) {
    const column = columns.get(name);
    if (column === undefined || !schema.keys.includes(name) || !schema.required.includes(name)) continue;
    const entered = log.entered.get(name);
    for (const row of emptyRows(column))
      if (!entered?.has(row)) log.inRow('no-key', row, name, '', say`a ${midSentence(title)}`);
  }
}

function logRepeats(schema: TableSchema, columns: ReadonlyMap<string, Column>, rows: number, log: ProblemLog): void {
  const { keys, required, numbered } = schema;
  const complete = numbered === undefined ? required : [...required, numbered];
  if (keys.length === 0 || complete.some((name) => keys.includes(name) && !columns.has(name))) return;
  const present = keys.filter((name) => columns.has(name));
  const columnsOf = (names: readonly string[]) => names.map((name) => columns.get(name)!);
  const pairs = repeatedRows(columnsOf(present), columnsOf(complete), rows);
  for (const { row, first } of pairs) {
    const value = present.map((name) => shown(columns.get(name)!, row)).filter((text) => text !== '');
    const detail = say`one row for each ${present.join(', ')}; row ${log.fileRow(first)} has the same`;
    log.inRow('same-row-twice', row, '', value.join(', '), detail);
  }
}

function shown(column: Column, row: number): string {
  if (column instanceof TextColumn) return column.at(row);
  const value = column.values[row];
  return column.kind === 'date' ? isoFromDays(value) : Number.isNaN(value) ? '' : String(value);
}

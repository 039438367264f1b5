import { type Signal, signal } from '@preact/signals';
import { type KeptTable, TableRecord } from '../../lib/index.ts';

/** Whether this page types into the table of feet: then it has all columns that can be typed in. */
export const typedInto: Signal<boolean> = signal(false);

/** Grows with every change of the record. */
export const changes: Signal<number> = signal(0);

let current: { table: KeptTable; readonly record: TableRecord } | undefined;

/** The table of feet in use as it is typed in; another record begins when another table comes into use. */
export function recordOf(table: KeptTable): TableRecord {
  if (current?.table !== table) current = { table, record: new TableRecord('feet', table) };
  return current.record;
}

/** The table in use as it stands after all that was typed, without beginning a record. */
export function latest(table: KeptTable): KeptTable {
  return current?.table === table && current.record.touched ? current.record.table() : table;
}

/** Lets a table that the record has handed out be the one in use, and the record go on. */
export function goOnWith(table: KeptTable): KeptTable {
  if (current) current.table = table;
  return table;
}

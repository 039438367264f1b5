import { partName } from '../hoof/partName.ts';
import { type Columns, TextColumn } from '../sheet/column.ts';
import { Sheet } from '../sheet/sheet.ts';
import { say } from '../words/say.ts';

const keys = ['horse_id', 'date', 'limb', 'moment', 'repeat'];

/**
 * One standard error of every value whose error is known, beside the keys of its row.
 * @param leaveOut  columns whose errors can't be told from these rows
 * @returns for `wall_level_mm` a column `wall_level_error_mm`, in its unit
 */
export function errorSheet(feet: Sheet, leaveOut: ReadonlySet<string> = new Set()): Sheet {
  const columns: Columns & Record<string, { title?: string }> = Object.create(null);
  for (const name of keys) {
    const column = feet.column(name);
    columns[name] =
      column instanceof TextColumn
        ? new TextColumn(column.codes, column.levels)
        : { kind: column.kind, unit: column.unit, values: column.values };
  }
  for (const name of feet.names) {
    const column = feet.column(name);
    if (keys.includes(name) || leaveOut.has(name) || column instanceof TextColumn || column.error === undefined)
      continue;
    const { title = name, unit } = feet.describe(name);
    columns[partName(name, 'error')] = { title: say`${title}, standard error`, unit, values: column.error };
  }
  return Sheet.from(columns, keys);
}

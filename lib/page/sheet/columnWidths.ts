import type { Column } from '../../sheet/column.ts';
import { ComputedColumn } from '../../sheet/computedColumn.ts';
import { cellText } from './cellText.ts';
import type { ShownColumn } from './shownColumns.ts';

const CHARACTER = 7.3;
const PADDING = 20;
/** Room for an error, of which the widths know nothing: a whole column of them would have to be worked out first. */
const ERROR = 6;

/** Widths in px that fit the headings' longest words and a sample of the cells. */
export function columnWidths(columns: readonly ShownColumn[], data: readonly Column[], rows: Uint32Array): number[] {
  const sample = rows.subarray(0, 60);
  return columns.map((shown, index) => {
    const words = shown.title.split(' ').map(({ length }) => length);
    let longest = Math.max(...words, shown.title.length / 3) + (shown.formula ? 2 : 0);
    const hasError = shown.kind === 'number' && !shown.typed && (shown.formula !== undefined || given(data[index]));
    for (const row of sample) {
      const { value } = cellText(data[index], row, shown, true);
      longest = Math.max(longest, value.length + (hasError ? ERROR : 0));
    }
    return Math.ceil(Math.min(Math.max(longest, 7), 26) * CHARACTER + PADDING);
  });
}

/** Whether a column came with errors. */
const given = (column: Column) =>
  column.kind !== 'text' && !(column instanceof ComputedColumn) && column.error !== undefined;

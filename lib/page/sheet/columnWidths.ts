import type { Column } from '../../sheet/column.ts';
import { cellText } from './cellText.ts';
import type { ShownColumn } from './shownColumns.ts';

const CHARACTER = 7.3;
const PADDING = 20;

/** Widths in px that fit the headings' longest words and a sample of the cells. */
export function columnWidths(columns: readonly ShownColumn[], data: readonly Column[], rows: Uint32Array): number[] {
  const sample = rows.subarray(0, 60);
  return columns.map((shown, index) => {
    const words = shown.title.split(' ').map(({ length }) => length);
    let longest = Math.max(...words, shown.title.length / 3) + (shown.formula ? 2 : 0);
    for (const row of sample) {
      const { value, error } = cellText(data[index], row, shown);
      longest = Math.max(longest, value.length + (error ? error.length + 3 : 0));
    }
    return Math.ceil(Math.min(Math.max(longest, 7), 26) * CHARACTER + PADDING);
  });
}

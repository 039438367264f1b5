import { type Column, TextColumn } from '../../sheet/column.ts';
import { ComputedColumn } from '../../sheet/computedColumn.ts';
import { fonts, sizes } from '../../views/theme.ts';
import { cellText } from './cellText.ts';
import type { ShownColumn } from './shownColumns.ts';

const PADDING = 20;
/** Room for an error, of which the widths know nothing: a whole column of them would have to be worked out first. */
const ERROR = 6;
const LEAST = 7;
/** Longer words are cut, unless there is room. */
const MOST = 26;

/** How many characters each column asks for, by its heading's longest words and its cells: a sample of the numbers, all words. */
export function columnLengths(columns: readonly ShownColumn[], data: readonly Column[], rows: Uint32Array): number[] {
  const sample = rows.subarray(0, 60);
  return columns.map((shown, index) => {
    const column = data[index];
    const words = shown.title.split(' ').map(({ length }) => length);
    let longest = Math.max(LEAST, ...words, shown.title.length / 3) + (shown.formula ? 2 : 0);
    if (column instanceof TextColumn) for (const { length } of column.levels) longest = Math.max(longest, length);
    const hasError = shown.kind === 'number' && !shown.typed && (shown.formula !== undefined || given(column));
    for (const row of sample) {
      const { value } = cellText(column, row, shown, true);
      longest = Math.max(longest, value.length + (hasError ? ERROR : 0));
    }
    return longest;
  });
}

/**
 * Widths in px for columns of so many characters: what is longer than usual is cut, but takes what room is left over. The last
 * is never cut, as it pushes nothing away.
 * @param character  the width of one, in px
 * @param room  of the sheet, in px
 */
export function columnWidths(lengths: readonly number[], character: number, room: number): number[] {
  const width = (length: number) => Math.ceil(length * character + PADDING);
  const usual = lengths.map((length, index) => width(index < lengths.length - 1 ? Math.min(length, MOST) : length));
  const lacking = lengths.map((length, index) => width(length) - usual[index]);
  const [taken, asked] = [usual, lacking].map((all) => all.reduce((sum, one) => sum + one, 0));
  const share = asked === 0 ? 0 : Math.min(Math.max((room - taken) / asked, 0), 1);
  return usual.map((one, index) => one + Math.floor(lacking[index] * share));
}

/** The width in px of a digit as the cells of a sheet are set, which letters are narrower than on the whole. */
export function characterWidth(): number {
  const context = document.createElement('canvas').getContext('2d')!;
  const root = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
  context.font = `${(sizes.label / 16) * root}px ${fonts.label}`;
  return context.measureText('0').width;
}

/** Whether a column came with errors. */
const given = (column: Column) =>
  column.kind !== 'text' && !(column instanceof ComputedColumn) && column.error !== undefined;

import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import type { JournalEdit } from './journal.ts';

/** How cells were changed: typed one by one, filled down, or pasted as a block. */
export type How = 'set' | 'fill' | 'paste';

/**
 * A change in words for people, short enough for a button: what was done to which columns, and to how many rows.
 * @param titleOf  what people call a column
 * @example editInWords(edits, 'set', titleOf) // 'typing in Toe angle'
 */
export function editInWords(edits: readonly JournalEdit[], how: How, titleOf: (column: string) => string): string {
  const cells = edits.filter((edit) => edit.kind === 'cells');
  if (cells.length > 0) {
    const titles = [...new Set(cells.map(({ column }) => titleOf(column)))];
    const rows = new Set(cells.flatMap((change) => change.rows)).size;
    const cleared = how === 'set' && cells.every(({ after }) => after.every((cell) => cell === null));
    const what = cleared ? say`clearing` : { set: say`typing in`, fill: say`filling`, paste: say`pasting into` }[how];
    const where =
      titles.length > 2
        ? counted(titles.length, { one: say`${titles.length} column`, other: say`${titles.length} columns` })
        : titles.join(say` and `);
    return `${what} ${where}${rows > 1 ? `, ${rowsInWords(rows)}` : ''}`;
  }
  const [edit] = edits;
  if (edit.kind === 'rows') {
    const { length } = edit.rows;
    return edit.how === 'add'
      ? counted(length, { one: say`adding a row`, other: say`adding ${length} rows` })
      : counted(length, { one: say`removing a row`, other: say`removing ${length} rows` });
  }
  if (edit.kind === 'own column') return say`${edit.after ? say`adding` : say`removing`} the column ${edit.column}`;
  return edit.kind === 'opened' && edit.after ? say`opening ${edit.after}` : say`putting a table away`;
}

const rowsInWords = (rows: number) => counted(rows, { one: say`${rows} row`, other: say`${rows} rows` });

import type { Edit } from '../sheet/edits.ts';

/**
 * A change in words for people, short enough for a button: what was done to which columns, and to how many rows.
 * @param titleOf  what people call a column
 * @example editInWords(edits, titleOf) // 'typing in Toe angle'
 */
export function editInWords(edits: readonly Edit[], titleOf: (column: string) => string): string {
  const edit = edits.find(({ kind }) => kind === 'cells') ?? edits[0];
  switch (edit.kind) {
    case 'cells': {
      const titles = [...new Set(edit.cells.map(({ name }) => titleOf(name)))];
      const rows = new Set(edit.cells.flatMap((change) => change.rows)).size;
      const cleared = edit.how === 'set' && edit.cells.every(({ after }) => after.every((cell) => cell === null));
      const what = cleared ? 'clearing' : { set: 'typing in', fill: 'filling', paste: 'pasting into' }[edit.how];
      const where = titles.length > 2 ? `${titles.length} columns` : titles.join(' and ');
      return `${what} ${where}${rows > 1 ? `, ${rows} rows` : ''}`;
    }
    case 'rows': {
      const { length } = edit.rows;
      return `${edit.how === 'add' ? 'adding' : 'removing'} ${length === 1 ? 'a row' : `${length} rows`}`;
    }
    case 'columns':
      return `${edit.how === 'add' ? 'adding' : 'removing'} the column ${edit.columns.map(({ name }) => name).join(', ')}`;
    default:
      return 'changing a column';
  }
}

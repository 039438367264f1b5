import type { Column } from '../../sheet/column.ts';
import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import { wholeNumber } from '../../words/wholeNumber.ts';
import type { Editing } from './editing.ts';
import { editText } from './editText.ts';
import type { ShownColumn } from './shownColumns.ts';

/** A block of the grid: first and last row and column as shown, from 0. */
export interface Region {
  readonly top: number;
  readonly bottom: number;
  readonly left: number;
  readonly right: number;
}

/** A grid that is typed into: what it shows, and the table behind it. */
export interface TypedGrid {
  readonly editing: Editing;
  readonly columns: readonly ShownColumn[];
  readonly data: readonly Column[];
  /** Rows of the sheet in the order shown. */
  readonly rows: Uint32Array;
  /** Whether all rows are shown in the table's own order, so that more can follow the last. */
  readonly whole: boolean;
}

const unitOf =
  (columns: readonly ShownColumn[]) =>
  (name: string): string | undefined => {
    const shown = columns.find((column) => column.name === name);
    return shown?.kind === 'number' && shown.shownUnit !== '' ? shown.shownUnit : undefined;
  };

/** What to say of a column that can't be typed in. */
export function workedOut({ title, formula }: ShownColumn): string {
  return formula === undefined
    ? say`${title} comes from other tables and can’t be typed in here`
    : say`${title} is worked out and can’t be typed in. Change what it is made from`;
}

/** The text to begin with in a cell: as it was typed, or with all digits. */
export function beginningText({ editing, columns, data, rows }: TypedGrid, row: number, column: number): string {
  return editing.unread(columns[column].name, rows[row])?.text ?? editText(data[column], rows[row], columns[column]);
}

/** Puts typed text into one cell. @returns what to say of it */
export function typeCell({ editing, columns, rows }: TypedGrid, row: number, column: number, text: string): string {
  const shown = columns[column];
  const { unread } = editing.put({
    rows: [rows[row]],
    columns: [shown.name],
    texts: [[text]],
    how: 'set',
    unitOf: unitOf(columns),
  });
  if (unread === 0) return `${shown.title}: ${text.trim() === '' ? say`emptied` : text.trim()}`;
  const why = editing.unread(shown.name, rows[row]);
  return say`${shown.title}: “${text.trim()}” can’t be used. Expected ${why?.expected ?? ''}. ${why?.remedy ?? ''}`;
}

/**
 * Puts a block from the clipboard in place, from the chosen block's first cell on. Where several times as many rows or
 * columns are chosen as it has, it is repeated over them: one cell goes into all that are chosen.
 * Columns that are worked out are passed over; lines below the last row get rows of their own.
 * @returns how far it reached, and what to say of it
 */
export function pasteBlock(grid: TypedGrid, region: Region, text: string): { said: string; region: Region } {
  const { editing, columns, rows, whole } = grid;
  const { cells, mark } = editing.clipboard(text);
  if (cells.length === 0) return { said: say`There was nothing to paste`, region };
  const high = repeated(cells.length, region.bottom - region.top + 1);
  const wide = repeated(cells[0].length, region.right - region.left + 1);
  const across = columns.slice(region.left, region.left + wide);
  const into = across.filter(({ name }) => editing.typed(name));
  const down = rows.subarray(region.top, region.top + high);
  const more = whole ? high - down.length : 0;
  const at = (i: number, column: ShownColumn) => cells[i % cells.length][across.indexOf(column) % cells[0].length];
  const { changed, unread } = editing.put(
    {
      rows: [...down],
      columns: into.map(({ name }) => name),
      texts: Array.from({ length: down.length + more }, (_, i) => into.map((column) => at(i, column))),
      how: 'paste',
      unitOf: unitOf(columns),
      mark,
    },
    more,
  );
  const left = across.length - into.length;
  const beyond = wide - across.length;
  const cut = high - down.length - more;
  const said = [
    counted(changed, {
      one: say`Pasted: ${wholeNumber(changed)} cell has changed`,
      other: say`Pasted: ${wholeNumber(changed)} cells have changed`,
    }),
    more > 0
      ? counted(more, { one: say`${wholeNumber(more)} row added`, other: say`${wholeNumber(more)} rows added` })
      : '',
    unread > 0
      ? counted(unread, {
          one: say`${wholeNumber(unread)} cell can’t be used and is marked`,
          other: say`${wholeNumber(unread)} cells can’t be used and are marked`,
        })
      : '',
    left > 0
      ? counted(left, {
          one: say`${left} column is worked out and stayed as it was`,
          other: say`${left} columns are worked out and stayed as they were`,
        })
      : '',
    beyond > 0
      ? counted(beyond, {
          one: say`${beyond} column found no place to the right`,
          other: say`${beyond} columns found no place to the right`,
        })
      : '',
    cut > 0
      ? counted(cut, {
          one: say`${wholeNumber(cut)} line found no row: show all rows in their own order to add some`,
          other: say`${wholeNumber(cut)} lines found no row: show all rows in their own order to add some`,
        })
      : '',
  ];
  return {
    said: said.filter(Boolean).join('. '),
    region: { ...region, bottom: region.top + down.length + more - 1, right: region.left + across.length - 1 },
  };
}

/** What is chosen, where it holds so many cells a whole number of times; else as many as there are. */
function repeated(cells: number, chosen: number): number {
  return chosen % cells === 0 ? chosen : cells;
}

/** Fills the block's first row down; a single row from the row above it. @returns what to say of it */
export function fillDown({ editing, columns, rows }: TypedGrid, region: Region): string {
  const from = region.top === region.bottom ? region.top - 1 : region.top;
  if (from < 0) return say`There is no row above to fill from`;
  const names = typedIn(columns, editing, region);
  if (names.length === 0) return workedOut(columns[region.left]);
  const changed = editing.fill(names, [...rows.subarray(from, region.bottom + 1)]);
  return counted(changed, {
    one: say`Filled down: ${wholeNumber(changed)} cell has changed`,
    other: say`Filled down: ${wholeNumber(changed)} cells have changed`,
  });
}

export function clearCells({ editing, columns, rows }: TypedGrid, region: Region): string {
  const names = typedIn(columns, editing, region);
  if (names.length === 0) return workedOut(columns[region.left]);
  const changed = editing.clear(names, [...rows.subarray(region.top, region.bottom + 1)]);
  return counted(changed, {
    one: say`${wholeNumber(changed)} cell emptied`,
    other: say`${wholeNumber(changed)} cells emptied`,
  });
}

function typedIn(columns: readonly ShownColumn[], editing: Editing, { left, right }: Region): string[] {
  return columns.slice(left, right + 1).flatMap(({ name }) => (editing.typed(name) ? [name] : []));
}

/** Takes the last change back or does it again. @returns what to say of it */
export function travel(editing: Editing, way: 'back' | 'forth'): string {
  const words = way === 'back' ? editing.undo() : editing.redo();
  if (words === undefined)
    return way === 'back' ? say`There is nothing to take back` : say`There is nothing to do again`;
  return `${way === 'back' ? say`Taken back` : say`Done again`}: ${words}`;
}

/** Which way a key travels through the changes, `undefined` where it is no such key. */
export function travelKey({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): 'back' | 'forth' | undefined {
  if (!(ctrlKey || metaKey) || altKey) return undefined;
  if (key.toLowerCase() === 'y') return 'forth';
  if (key.toLowerCase() !== 'z') return undefined;
  return shiftKey ? 'forth' : 'back';
}

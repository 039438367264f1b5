import type { Cell } from '../../sheet/cell.ts';
import type { ComputedDefinition } from '../../sheet/edits.ts';

/** Texts as typed: `texts[i][j]` goes to row `rows[i]` of the column `columns[j]`. */
export interface TypedTexts {
  readonly rows: readonly number[];
  readonly columns: readonly string[];
  readonly texts: readonly (readonly string[])[];
  readonly how: 'set' | 'fill' | 'paste';
  /** UCUM code of a number that names no unit, column by column. */
  readonly unitOf: (column: string) => string | undefined;
  readonly mark?: '.' | ',';
}

/** One change of one cell, as whoever keeps the table remembers it. */
export interface PastCell {
  /** In milliseconds since 1970-01-01 UTC, as the device's clock said. */
  readonly at: number;
  /** `''` where it isn't known. */
  readonly who: string;
  /** `text` could not be read. */
  readonly before: Cell | { readonly text: string };
  readonly after: Cell | { readonly text: string };
}

/** The picture that a cell was measured from. */
export interface CellPicture {
  readonly name: string;
  /** Where it is opened. */
  readonly address: string;
  /** From where the foot is seen in it. */
  readonly words: string;
  /** What the cell was worked from, in px from the upper left corner. */
  readonly points: readonly { readonly title: string; readonly x: number; readonly y: number }[];
  /** Whether points were moved since the measure was entered. */
  readonly moved: boolean;
}

/**
 * How a table that a sheet shows row for row is typed into. Whoever keeps the table hands it in; the sheet follows each
 * change by itself.
 */
export interface Editing {
  /** A name of a row that stays its own while others come and go. */
  rowKey(row: number): string;
  /** Whether a column is typed in; all others are worked out. */
  typed(column: string): boolean;
  /** The words that may stand in a column, where no others may. */
  words(column: string): readonly string[] | undefined;
  /** The text in a cell that could not be read, with what was expected and what to do. */
  unread(
    column: string,
    row: number,
  ): { readonly text: string; readonly expected: string; readonly remedy: string } | undefined;
  /** Reads typed texts into cells; `more` further lines of texts get new rows at the end. Nothing is ever refused. */
  put(texts: TypedTexts, more?: number): { readonly changed: number; readonly unread: number };
  /** Puts the first of the rows into the others; how many cells have changed. */
  fill(columns: readonly string[], rows: readonly number[]): number;
  clear(columns: readonly string[], rows: readonly number[]): number;
  addRows(rows: readonly Readonly<Record<string, Cell>>[], at?: number): void;
  removeRows(rows: Iterable<number>): void;
  /** The cells of a block as it comes from the clipboard. */
  clipboard(text: string): { readonly cells: readonly (readonly string[])[]; readonly mark: '.' | ',' };
  /** Takes the last change back, or does it again; what it was, in words. */
  undo(): string | undefined;
  redo(): string | undefined;
  readonly undoable: string | undefined;
  readonly redoable: string | undefined;
  /** The reader's own computed columns; they can be added and removed, which fails in words where it can't be. */
  readonly own: readonly ComputedDefinition[];
  addOwn(definition: ComputedDefinition): void;
  removeOwn(name: string): void;
  /** Whether what was typed is safe over a reload. */
  readonly kept: 'kept' | 'keeping' | 'not kept';
  /** Why it isn't, in words. */
  readonly whyNotKept?: string;
  /** What was done to a cell, the first change first. */
  history?(column: string, row: number): Promise<readonly PastCell[]>;
  /** The picture that a cell was measured from; `undefined` for any other cell. */
  picture?(column: string, row: number): Promise<CellPicture | undefined>;
  /** Called after every change, and when what is kept changes. @returns what ends it */
  subscribe(listener: () => void): () => void;
}

/**
 * Something in a table that could not be used as it stands. Data, not words: `code` names the kind,
 * the sentences are made from it, and the cell's own text is kept.
 */
export interface Problem {
  readonly code: string;
  readonly file: string;
  /** As a spreadsheet numbers it: the heading is row 1. 0 where the whole file is meant. */
  readonly row: number;
  readonly column: string;
  /** The cell's own text, untouched. */
  readonly value: string;
  readonly expected: string;
  /** What to do about it. */
  readonly remedy: string;
}

import type { Problem } from './problem.ts';
import { type ProblemCode, problem } from './problems.ts';

/** Problems as they are found, and the text of every cell that could not be used, so that nothing entered is lost. */
export class ProblemLog {
  readonly problems: Problem[] = [];
  /** By column name, then by row of the table (from 0), the cell's own text. */
  readonly entered = new Map<string, Map<number, string>>();

  /**
   * @param fileRow  the row of the file, as a spreadsheet numbers it, of a row of the table
   */
  constructor(
    readonly file: string,
    readonly fileRow: (row: number) => number,
  ) {}

  /** Something about the file, or about a heading: `row` as a spreadsheet numbers it, 0 for the whole file. */
  about(code: ProblemCode, row: number, column = '', value = '', detail = ''): void {
    this.problems.push(problem(code, { file: this.file, row, column, value }, detail));
  }

  /** Something about a row of the table. */
  inRow(code: ProblemCode, row: number, column = '', value = '', detail = ''): void {
    this.about(code, this.fileRow(row), column, value, detail);
  }

  /** Keeps the text of a cell that could not be used. */
  keep(column: string, row: number, value: string): void {
    let rows = this.entered.get(column);
    if (rows === undefined) {
      rows = new Map();
      this.entered.set(column, rows);
    }
    rows.set(row, value);
  }

  /** A cell that could not be used. */
  cell(code: ProblemCode, row: number, column: string, value: string, detail = ''): void {
    this.keep(column, row, value);
    this.inRow(code, row, column, value, detail);
  }
}

import { type Columns, TextColumn } from '../sheet/column.ts';
import { say } from '../words/say.ts';
import type { Problem } from './problem.ts';

/** What was expected and what to do, by the problem's code; `{detail}` is filled in where the problem is found. */
const wordings = {
  'empty-file': [say`a heading row and rows of cells`, say`Choose the file that holds the measurements`],
  'not-text': [say`a table written as text`, say`Where it is a spreadsheet’s own file, save it there as CSV`],
  encoding: [
    say`text in UTF-8`,
    say`It was read as windows-1252. If letters or signs look wrong, save the file again as UTF-8`,
  ],
  'title-row': [say`headings in the first row`, say`It was taken for a title and left out`],
  'broken-quotes': [
    say`a closing quote at the end of the cell`,
    say`The cell was read as it stands. Take the stray quote out`,
  ],
  'short-rows': ['{detail}', say`The cells they lack were read as not measured. Look whether a row was broken in two`],
  'too-many-cells': [
    say`no more cells than headings`,
    say`Put quotes round a text that holds a {detail}, or give the column a heading`,
  ],
  'no-heading': [say`a heading`, say`The column was kept as {detail}. Give it a heading`],
  'duplicate-heading': [say`each heading once`, say`The second was kept as {detail}. Rename one of the two`],
  'same-meaning': [say`one column for {detail}`, say`The first was taken. Rename that one if this one is meant`],
  'heading-unit': [say`a unit for {detail}`, say`The column was kept under its own heading. Correct its unit`],
  'missing-column': [say`a column {detail}`, say`Add it, or correct its heading`],
  'not-a-number': ['{detail}', say`Correct the cell; it was left out`],
  'two-readings': [
    say`a number without a sign for thousands`,
    say`Write 1234 for thousands, or 1.234 for decimals; it was left out`,
  ],
  'unknown-unit': ['{detail}', say`Correct the cell or its unit; it was left out`],
  'beyond-anatomy': ['{detail}', say`Check the cell and its unit; it was kept as entered and left out of computation`],
  'not-a-word': [say`one of {detail}`, say`Write one of these words; the cell was left out`],
  'not-a-date': [say`a date such as 2026-03-09 or 9 Mar 2026`, say`Write the date as year-month-day; it was left out`],
  'two-digit-year': [
    say`a year of four digits`,
    say`Write whether 19 or 20 stands before the year; the date was left out`,
  ],
  'unlikely-year': [say`a year from 1900 to 2099`, say`Correct the year; the date was left out`],
  'serial-date': [
    say`a date, not a spreadsheet’s day number`,
    say`Show the column as dates (yyyy-mm-dd) in the spreadsheet and save it again`,
  ],
  'date-order': [
    '{detail}',
    say`Say the order with --dates dmy or --dates mdy (the page asks), or write year-month-day`,
  ],
  'no-key': [
    '{detail}',
    say`Fill it in, or take the row out if it is a total or a heading; until then it is matched with no other row`,
  ],
  'same-row-twice': ['{detail}', say`Number the repeats 1, 2, …, or take one of the rows out; both were kept`],
} as const satisfies Record<string, readonly [string, string]>;

export type ProblemCode = keyof typeof wordings;

/**
 * A problem in the words that go with its code.
 * @param place  file, row as a spreadsheet numbers it (0: the whole file), column, and the cell's own text
 * @param detail  what the wording leaves open
 */
export function problem(
  code: ProblemCode,
  place: { readonly file: string; readonly row: number; readonly column?: string; readonly value?: string },
  detail = '',
): Problem {
  const [expected, remedy] = wordings[code].map((words) => words.replace('{detail}', () => detail));
  return {
    code,
    file: place.file,
    row: place.row,
    column: place.column ?? '',
    value: place.value ?? '',
    expected,
    remedy,
  };
}

/**
 * A problem as one sentence: `feet.csv, row 7, toe_angle_deg: “5O”. Expected …. Correct the cell; it was left out.`
 */
export function problemSentence({ file, row, column, value, expected, remedy }: Problem): string {
  const place = [file, row > 0 ? say`row ${row}` : '', column].filter((part) => part !== '').join(', ');
  const found = value === '' ? '' : say` “${value.length > 80 ? `${value.slice(0, 80)}…` : value}”.`;
  return say`${place}:${found} Expected ${expected}. ${remedy}.`;
}

/** Problems as a table, one row each, to show or to write out. */
export function problemColumns(problems: readonly Problem[]): Columns {
  const text = (name: 'code' | 'file' | 'column' | 'value' | 'expected' | 'remedy') =>
    TextColumn.from(problems.map((problem) => problem[name]));
  return {
    file: text('file'),
    row: { values: Float64Array.from(problems, ({ row }) => row), unit: '1' },
    column: text('column'),
    value: text('value'),
    code: text('code'),
    expected: text('expected'),
    remedy: text('remedy'),
  };
}

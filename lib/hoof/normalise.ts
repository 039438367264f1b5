import { type ColumnInput, type Columns, rowCount, TextColumn } from '../sheet/column.ts';
import { daysFromIso } from '../sheet/days.ts';
import { conversion, convertible, parseUnit } from '../sheet/dimension.ts';
import { type Context, context, contextOf, type TableName, understoodWord } from './context.ts';
import { emptyRows } from './emptyRows.ts';
import { HerdError } from './herdError.ts';
import { parseLimb } from './limbs.ts';
import type { Measured } from './measure.ts';
import { measured } from './measured.ts';
import type { Problem } from './problem.ts';

export interface Normalised {
  readonly columns: Columns;
  readonly problems: readonly Problem[];
}

const measuredByName = new Map(measured.map((row) => [row.name, row]));

/**
 * A table made by hand or read from a file, brought to the one form inside: limb codes, day numbers, millimetres,
 * degrees and kilograms, 1 and 0 for yes and no, the table's own words.
 * @param columns  any columns; those that are not known are kept as they are
 * @returns new columns (arrays that needed no change are shared), and a problem for each cell that couldn't be used,
 *   which is then missing
 * @throws HerdError where a required column is missing, or a measured column holds text or a unit that doesn't convert
 */
export function normalise(columns: Columns, table: TableName, file: string = table): Normalised {
  for (const { name, requiredIn, about } of context)
    if (requiredIn?.includes(table) && !Object.hasOwn(columns, name))
      throw new HerdError(
        `${file} has no column ${name}${Object.keys(columns).length === 0 ? ' and no other' : `, only ${Object.keys(columns).join(', ')}`}`,
        `one named ${name}`,
        `Name the column so: ${about}`,
      );
  rowCount(columns);
  const problems: Problem[] = [];
  const clean: Columns = Object.create(null);
  for (const [name, input] of Object.entries(columns)) {
    const report: Report = (row, value, expected, remedy, code) =>
      problems.push({ code, file, row: row + 2, column: name, value, expected, remedy });
    const known = contextOf(name);
    const row = measuredByName.get(name);
    if (known !== undefined) clean[name] = contextColumn(known, input, report);
    else if (row !== undefined) clean[name] = measuredColumn(row, input, file, report);
    else clean[name] = input;
    if (known?.requiredIn?.includes(table))
      for (const at of emptyRows(input)) report(at, '', `a ${known.title.toLowerCase()}`, withoutKey, 'no-key');
  }
  return { columns: clean, problems };
}

type Report = (row: number, value: string, expected: string, remedy: string, code: string) => void;

const withoutKey =
  'Fill it in, or take the row out if it is a total or a heading; until then it is matched with no other row';
const leftOut = 'Correct the cell; until then it counts as missing';

function contextColumn(column: Context, input: ColumnInput, report: Report): ColumnInput {
  if (column.name === 'limb') return limbColumn(input, report);
  if (column.kind === 'date') return dateColumn(input, report);
  if (column.kind === 'text') return wordColumn(column, asText(input), report);
  if (column.kind === 'boolean') return yesNoColumn(column, input, report);
  return numberColumn(input, report);
}

/** Text as it is; numbers as people would write them, so that a horse may be called 7. */
function asText(input: ColumnInput): TextColumn {
  if (input instanceof TextColumn) return input;
  const { values } = input;
  return TextColumn.from(
    values instanceof Float64Array ? Array.from(values, (v) => (Number.isNaN(v) ? '' : String(v))) : values,
  );
}

/** A dictionary's words replaced; `undefined` makes a word missing and is reported at each row that has it. */
function replaced(
  column: TextColumn,
  replace: (text: string) => string | undefined,
  notUnderstood: (row: number, text: string) => void,
): TextColumn {
  const words = column.levels.map((text) => (text.trim() === '' ? '' : replace(text)));
  if (words.every((word, code) => word === column.levels[code])) return column;
  const levels: string[] = [];
  const codes = words.map((word) => {
    if (word === undefined || word === '') return -1;
    const known = levels.indexOf(word);
    return known >= 0 ? known : levels.push(word) - 1;
  });
  const rows = column.codes.map((code, row) => {
    if (code < 0) return -1;
    if (words[code] === undefined) notUnderstood(row, column.levels[code]);
    return codes[code];
  });
  return new TextColumn(rows, levels);
}

function wordColumn(column: Context, input: TextColumn, report: Report): ColumnInput {
  if (column.words === undefined)
    return replaced(
      input,
      (text) => text.trim(),
      () => {},
    );
  const expected = Object.keys(column.words).join(', ');
  return replaced(
    input,
    (text) => understoodWord(column, text),
    (row, text) => report(row, text, expected, leftOut, 'not-a-word'),
  );
}

function limbColumn(input: ColumnInput, report: Report): ColumnInput {
  const expected = 'LF, RF, LH or RH, or words such as near fore';
  return replaced(asText(input), parseLimb, (row, text) => report(row, text, expected, leftOut, 'not-a-word'));
}

function dateColumn(input: ColumnInput, report: Report): ColumnInput {
  if (input.values instanceof Float64Array) {
    const values = input.values.map((value, row) => {
      if (Number.isNaN(value) || Number.isInteger(value)) return value;
      report(row, String(value), 'whole days since 1970-01-01', leftOut, 'not-a-date');
      return Number.NaN;
    });
    return { kind: 'date', unit: 'd', values };
  }
  const values = numbersOf(asText(input), daysFromIso, (row, text) =>
    report(row, text, 'a date such as 2026-03-09', leftOut, 'not-a-date'),
  );
  return { kind: 'date', unit: 'd', values };
}

function yesNoColumn(column: Context, input: ColumnInput, report: Report): ColumnInput {
  const bad = (row: number, text: string): number => {
    report(row, text, 'yes or no', leftOut, 'not-a-word');
    return Number.NaN;
  };
  if (input.values instanceof Float64Array) {
    const values = input.values.map((v, row) => (Number.isNaN(v) || v === 0 || v === 1 ? v : bad(row, String(v))));
    return { kind: 'boolean', unit: '1', values };
  }
  const answers: Readonly<Record<string, number>> = { yes: 1, no: 0 };
  const values = numbersOf(asText(input), (text) => answers[understoodWord(column, text) ?? ''] ?? Number.NaN, bad);
  return { kind: 'boolean', unit: '1', values };
}

function numberColumn(input: ColumnInput, report: Report): ColumnInput {
  if (input.values instanceof Float64Array) return input;
  const values = numbersOf(asText(input), Number, (row, text) =>
    report(row, text, 'a number', leftOut, 'not-a-number'),
  );
  return { kind: 'number', unit: input.unit, values };
}

/** A number for each text of a column; blanks are missing, and what `read` finds no number in is reported and missing. */
function numbersOf(
  { codes, levels }: TextColumn,
  read: (text: string) => number,
  notUnderstood: (row: number, text: string) => void,
): Float64Array {
  const texts = levels.map((level) => level.trim());
  const numbers = texts.map((text) => (text === '' ? Number.NaN : read(text)));
  return Float64Array.from(codes, (code, row) => {
    if (code < 0) return Number.NaN;
    if (Number.isNaN(numbers[code]) && texts[code] !== '') notUnderstood(row, levels[code]);
    return numbers[code];
  });
}

function measuredColumn(row: Measured, input: ColumnInput, file: string, report: Report): ColumnInput {
  const numbers = numberColumn(input, report);
  const values = numbers.values as Float64Array;
  const factor = factorTo(row, input.unit, file);
  const [least, most] = row.anatomy;
  const beyond = (value: number): boolean => value * factor < least || value * factor > most;
  if (factor === 1 && !values.some(beyond)) return { kind: 'number', unit: row.unit, values, error: numbers.error };
  const kept = values.map((value, at) => {
    if (!beyond(value)) return value * factor;
    const shown = factor === 1 ? String(value) : `${value} ${input.unit}`;
    report(
      at,
      shown,
      `${least} to ${most} ${row.unit}`,
      `Check it against the foot; until then it is left out`,
      'beyond-anatomy',
    );
    return Number.NaN;
  });
  return { kind: 'number', unit: row.unit, values: kept, error: numbers.error?.map((e) => e * factor) };
}

function factorTo(row: Measured, unit: string | undefined, file: string): number {
  if (unit === undefined || unit === '1') return 1;
  const [from, to] = [parseUnit(unit), parseUnit(row.unit)];
  if (convertible(from, to)) return conversion(from, to);
  throw new HerdError(
    `${row.name} of ${file} is in ${unit}`,
    `${row.unit}, or a unit that converts to it`,
    'Give the column the unit that it was measured in',
  );
}

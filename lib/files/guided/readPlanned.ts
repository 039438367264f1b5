import { type Limb, limbs, parseLimb } from '../../hoof/limbs.ts';
import { isoFromDays } from '../../sheet/days.ts';
import { unguard } from '../guard.ts';
import { markOf } from '../layout.ts';
import { isMissing } from '../missingWords.ts';
import { isSerialDay } from '../parseDate.ts';
import { type DecimalMark, parseQuantity } from '../parseQuantity.ts';
import type { Problem } from '../problem.ts';
import { problem } from '../problems.ts';
import { readTable, type TableRead } from '../readTable.ts';
import { schemas, type TableSchema } from '../schemas.ts';
import type { CellGrid, SerialDays } from './cellGrid.ts';
import { fileHeadings, limbsAbove } from './fileHeadings.ts';
import { type ColumnUse, type ImportPlan, limbsAcross } from './importPlan.ts';

const markRows = 40;

/** A file as it is read by a plan. */
export interface PlannedRead extends TableRead {
  /** For each row of the table the row of the file, from 0, that it came from. */
  readonly rowsOfFile: readonly number[];
  /** Words for limbs that are not understood, each once. */
  readonly strangeLimbs: readonly string[];
}

/**
 * Reads a file by a plan: a row a foot, also where the file has a row a horse with columns for each limb. Every cell that
 * can't be used is a problem, by the row that it has in the file.
 * @param most  how many rows of the file to read; all where left out
 */
export function readPlanned(grid: CellGrid, plan: ImportPlan, most = Number.POSITIVE_INFINITY): PlannedRead {
  const { lines, rows, strange } = tidyRows(grid, plan, most);
  const { table, dates } = plan;
  const used = new Set(lines.used);
  const schema: TableSchema = {
    ...schemas[table],
    columns: schemas[table].columns.filter(({ name }) => used.has(name)),
  };
  const text = `sep=\t\n${lines.written.join('\n')}\n`;
  const read = readTable(text, { file: grid.file, dates, schema });
  // Two lines stand above the first row of what was written.
  const rowOfFile = (row: number) => (row < 3 ? plan.headingRow + 1 : (rows[row - 3] ?? plan.headingRow) + 1);
  return {
    ...read,
    problems: [
      ...titles(grid, plan.headingRow),
      ...read.problems.filter(({ code }) => code !== 'same-meaning').map((problem) => placed(problem, rowOfFile)),
    ],
    rowsOfFile: rows,
    strangeLimbs: strange,
  };
}

/** The rows above the headings that say anything, but for limbs that stand over columns. */
function titles(grid: CellGrid, headingRow: number): Problem[] {
  const above = grid.rows.slice(0, limbsAbove(grid, headingRow) ? headingRow - 1 : headingRow);
  return above.flatMap((row, at) => {
    const value = row.filter((text) => text !== '').join(' ');
    return value === '' ? [] : problem('title-row', { file: grid.file, row: at + 1, value });
  });
}

/** Two readings of one foot name each other's rows. */
function placed({ row, expected, ...problem }: Problem, rowOfFile: (row: number) => number): Problem {
  const words = expected.replace(/(?<=; row )\d+(?= has the same$)/, (number) => String(rowOfFile(Number(number))));
  return { ...problem, row: row === 0 ? 0 : rowOfFile(row), expected: words };
}

interface TidyRows {
  readonly lines: { readonly written: string[]; readonly used: string[] };
  readonly rows: number[];
  readonly strange: string[];
}

/** The rows that the plan makes of the file, under the names of the table's columns. */
function tidyRows(grid: CellGrid, plan: ImportPlan, most: number): TidyRows {
  const headings = fileHeadings(grid, plan.headingRow);
  const across = plan.table === 'feet' ? limbsAcross(plan) : [];
  const order = limbs.filter((limb) => across.includes(limb));
  const explained = new Map<string, Limb>(plan.limbs.map(([said, limb]) => [said, limb]));
  const strange = new Set<string>();
  const mark = markOf(grid.rows.slice(plan.headingRow + 1, plan.headingRow + 1 + markRows));
  const columns = targets(plan, headings, order.length > 0);
  const cellOf = (text: string, column: string | undefined, unit: string | undefined) => {
    if (unit !== undefined && isBare(text, mark)) return `${text} ${unitWord(unit)}`;
    if (column === 'date' && plan.serial && isSerialDay(text)) return serialDate(text, plan.serial);
    if (column !== 'limb') return text;
    const said = unguard(text).trim();
    const limb = explained.get(said);
    if (!limb && !isMissing(said) && !parseLimb(said)) strange.add(said);
    return limb ?? text;
  };

  const written = [columns.map(({ heading }) => quoted(heading)).join('\t')];
  const rows: number[] = [];
  const end = Math.min(grid.rows.length, plan.headingRow + 1 + most);
  for (let at = plan.headingRow + 1; at < end; at++) {
    const row = grid.rows[at];
    if (row.every((text) => text === '')) continue;
    for (const limb of order.length > 0 ? order : [undefined]) {
      if (limb && !hasReading(plan.uses, row, limb)) continue;
      const cells = columns.map(({ column, from, given }) => {
        if (given !== undefined) return given;
        if (from === undefined) return limb ?? '';
        const place = typeof from === 'object' ? from.get(limb!) : from;
        return place === undefined ? '' : cellOf(row[place] ?? '', column, unitOf(plan.uses[place]));
      });
      written.push(cells.map(quoted).join('\t'));
      rows.push(at);
    }
  }
  const used = columns.flatMap(({ column }) => column ?? []);
  return { lines: { written, used }, rows, strange: [...strange] };
}

/** One column of what is written: from a column of the file, from one a limb, or the same in every row. */
interface Target {
  readonly heading: string;
  /** Of the table; left out for a column under its own heading. */
  readonly column?: string;
  readonly from?: number | ReadonlyMap<Limb, number>;
  readonly given?: string;
}

function targets({ uses, given }: ImportPlan, headings: readonly string[], wide: boolean): Target[] {
  const found: Target[] = [];
  const acrossLimbs = new Map<string, Map<Limb, number>>();
  uses.forEach((use, c) => {
    if (use.kind === 'nothing') return;
    if (use.kind === 'own') found.push({ heading: headings[c] ?? '', from: c });
    else if (!use.limb || !wide) found.push({ heading: use.column, column: use.column, from: c });
    else {
      // The limb stands before the first that is of one.
      if (acrossLimbs.size === 0) found.push({ heading: 'limb', column: 'limb' });
      const places = acrossLimbs.get(use.column) ?? new Map<Limb, number>();
      if (places.size === 0) found.push({ heading: use.column, column: use.column, from: places });
      acrossLimbs.set(use.column, places.set(use.limb, c));
    }
  });
  const had = new Set(found.map(({ column }) => column));
  for (const [column, text] of given) if (!had.has(column)) found.push({ heading: column, column, given: text });
  return found;
}

/** A number, or a fraction of one, without a unit. */
function isBare(text: string, mark: DecimalMark): boolean {
  const read = parseQuantity(text, mark);
  return 'value' in read ? read.unit === undefined : 'fault' in read && read.fault === 'two readings';
}

const unitWords: Readonly<Record<string, string>> = { '[in_i]': 'in', '[lb_av]': 'lb' };

/** A unit as people write it behind a number. */
const unitWord = (unit: string) => (Object.hasOwn(unitWords, unit) ? unitWords[unit] : unit);

const unitOf = (use: ColumnUse) => (use.kind === 'column' ? use.unit : undefined);

/** A horse whose foot was not measured on that day has no row for it. */
function hasReading(uses: readonly ColumnUse[], row: readonly string[], limb: Limb): boolean {
  return uses.some((use, c) => use.kind === 'column' && use.limb === limb && (row[c] ?? '') !== '');
}

function quoted(text: string): string {
  return /["\t\r\n]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Days from 1970-01-01 to where the two ways of counting begin. */
const beginnings: Readonly<Record<SerialDays, number>> = { 1900: -25_569, 1904: -24_107 };

function serialDate(text: string, serial: SerialDays): string {
  return isoFromDays(Math.floor(Number(text)) + beginnings[serial]);
}

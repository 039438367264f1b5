import type { TableName } from '../../hoof/context.ts';
import { type Limb, parseLimb } from '../../hoof/limbs.ts';
import { unguard } from '../guard.ts';
import { matchHeading } from '../headings.ts';
import { markOf } from '../layout.ts';
import { isMissing } from '../missingWords.ts';
import { isSerialDay } from '../parseDate.ts';
import { schemas } from '../schemas.ts';
import { type CellGrid, mostColumns } from './cellGrid.ts';
import { fileHeadings, limbInHeading } from './fileHeadings.ts';
import { type ColumnMatch, headingMatches } from './headingMatches.ts';
import type { ColumnUse, ImportPlan } from './importPlan.ts';

const headingRows = 10;
const sampleRows = 40;

/**
 * How a file is most likely meant: which table, where its headings stand, and what each of its columns is. For the user
 * to look at and correct.
 * @param table  which table it is; left out, the one that fits best
 * @example suggestPlan(gridOfText('Horse,Seen,LF toe angle,RF toe angle\n…', 'wide.csv')).uses[2] // LF, toe_angle_deg
 */
export function suggestPlan(grid: CellGrid, table?: TableName, headingRow?: number): ImportPlan {
  const tables = table ? [table] : (['feet', 'horses', 'visits'] as const);
  const row = headingRow ?? likelyRow(grid);
  const plans = tables.map((name) => planOf(grid, name, row));
  // The first of the best: feet before horses.
  return plans.reduce((best, plan) => (plan.score > best.score + 1e-9 ? plan : best)).plan;
}

/** The first of the rows that could be headings of which the most cells name one of our columns. */
function likelyRow(grid: CellGrid): number {
  const { rows } = grid;
  const likely = rows.slice(0, headingRows).flatMap((row, at) => {
    const said = row.filter((text) => text !== '');
    const words = said.filter((text) => /\p{L}/u.test(text));
    return said.length > 1 && words.length * 2 > said.length ? [at] : [];
  });
  const first = rows.findIndex((row) => row.some((text) => text !== ''));
  const known = likely.map((at) => fileHeadings(grid, at).filter(namesColumn).length);
  return likely[known.indexOf(Math.max(...known))] ?? Math.max(first, 0);
}

function namesColumn(heading: string): boolean {
  const rest = limbInHeading(heading)?.rest ?? heading;
  return Object.values(schemas).some((schema) => matchHeading(rest, schema) ?? matchHeading(heading, schema));
}

function planOf(grid: CellGrid, table: TableName, headingRow: number): { plan: ImportPlan; score: number } {
  const schema = schemas[table];
  const headings = fileHeadings(grid, headingRow);
  const body = grid.rows.slice(headingRow + 1, headingRow + 1 + sampleRows);
  const mark = markOf(body);
  const candidates = headings.flatMap((heading, c) => {
    const cells = body.map((row) => row[c] ?? '');
    const matches = headingMatches(heading, cells, schema, mark).map((match) => ({ ...match, c }));
    const split = table === 'feet' ? limbInHeading(heading) : undefined;
    if (split === undefined) return matches;
    const ofAFoot = ({ column }: ColumnMatch) => column.kind === 'number' || column.kind === 'boolean';
    const across = headingMatches(split.rest, cells, schema, mark)
      .filter(ofAFoot)
      .map((match) => ({ ...match, c, limb: split.limb }));
    // The limb's letters are no words of a name: “OF angle” is of the off fore, not “angle of heel”.
    return [...across, ...matches.filter((match) => !ofAFoot(match))] as (ColumnMatch & { c: number; limb?: Limb })[];
  });
  const chosen = assigned(candidates);
  const names = new Set(chosen.map(({ column }) => column.name));
  const horse = names.has('horse_id') ? -1 : likelyNames(headings, body, new Set(chosen.map(({ c }) => c)));
  const uses = headings.map((heading, c): ColumnUse => {
    const match = chosen.find((one) => one.c === c);
    if (c === horse) return { kind: 'column', column: 'horse_id' };
    if (!match) return { kind: heading === '' ? 'nothing' : 'own' };
    const { column, unit, limb } = match;
    const other = unit !== undefined && unit !== column.unit;
    return { kind: 'column', column: column.name, ...(other && { unit }), ...(limb && { limb }) };
  });
  const dated = chosen.find(({ column }) => column.kind === 'date');
  const serial = dated === undefined && body.some((row) => row.some(isSerialDay));
  const plan: ImportPlan = {
    ...{ table, headingRow, uses: serial ? withSerialDays(uses, headings, body) : uses },
    ...((serial || body.some((row) => isSerialDay(row[dated?.c ?? -1] ?? ''))) && { serial: grid.serial }),
    ...{ limbs: [], given: [] },
  };
  const needed = schema.required.filter(
    (name) => names.has(name) || (name === 'limb' && chosen.some(({ limb }) => limb)),
  );
  return { plan, score: chosen.reduce((sum, { score }) => sum + score, 0) + needed.length / schema.required.length };
}

type Candidate = ColumnMatch & { readonly c: number; readonly limb?: Limb };

/** The best matches, each column of the file and of the table (of a limb) once. */
function assigned(candidates: readonly Candidate[]): Candidate[] {
  const taken = new Set<string>();
  const used = new Set<number>();
  const across = candidates.some(({ limb }) => limb);
  return [...candidates]
    .sort((a, b) => b.score - a.score || a.c - b.c)
    .filter(({ column, c, limb }) => {
      const place = `${limb ?? ''} ${column.name}`;
      if (used.has(c) || taken.has(place) || (across && column.name === 'limb')) return false;
      used.add(c);
      taken.add(place);
      return true;
    });
}

/** The first column of texts that are neither numbers nor limbs: whose feet these are, if no heading says so. */
function likelyNames(headings: readonly string[], body: readonly (readonly string[])[], used: ReadonlySet<number>) {
  return headings.findIndex((_, c) => {
    const said = body.map((row) => unguard(row[c] ?? '')).filter((text) => !isMissing(text));
    const names = said.filter((text) => /\p{L}{2}/u.test(text) && !parseLimb(text));
    return !used.has(c) && said.length > 0 && names.length >= 0.9 * said.length;
  });
}

/** Where no column reads as dates and one holds day numbers, that is the date. */
function withSerialDays(uses: readonly ColumnUse[], headings: readonly string[], body: readonly (readonly string[])[]) {
  const c = headings.findIndex((_, at) => {
    const said = body.map((row) => row[at] ?? '').filter((text) => !isMissing(text));
    return uses[at].kind !== 'column' && said.length > 0 && said.every(isSerialDay);
  });
  return uses.map((use, at): ColumnUse => (at === c ? { kind: 'column', column: 'date' } : use));
}

/** Files with the same headings are read alike: what tells them from others. */
export function headingsKey(grid: CellGrid, { headingRow }: ImportPlan): string {
  return JSON.stringify(fileHeadings(grid, headingRow).map((heading) => heading.toLowerCase().replace(/\s+/g, ' ')));
}

/** Whether a file looks like one of our tables at all: at least two of its columns are understood, and it has rows. */
export function promising(grid: CellGrid): boolean {
  if (grid.rows.some(({ length }) => length > mostColumns)) return false;
  const { uses, headingRow } = suggestPlan(grid);
  return grid.rows.length > headingRow + 1 && uses.filter(({ kind }) => kind === 'column').length > 1;
}

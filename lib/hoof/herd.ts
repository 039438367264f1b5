import { type ColumnInput, type Columns, rowCount, TextColumn, toColumn } from '../sheet/column.ts';
import { gather } from '../sheet/gather.ts';
import { say } from '../words/say.ts';
import { context } from './context.ts';
import { derivedColumn } from './derived.ts';
import { type ColumnError, columnErrors, withErrors } from './errors.ts';
import { FootSheet } from './footSheet.ts';
import { HerdError } from './herdError.ts';
import { horseSummaries, summaryNames } from './horseSummaries.ts';
import { intervalMeasures } from './intervalMeasures.ts';
import { intervalColumns } from './intervals.ts';
import { joinHorses, joinVisits } from './joins.ts';
import type { Measure } from './measure.ts';
import { measured } from './measured.ts';
import { measures } from './measures/index.ts';
import { normalise } from './normalise.ts';
import { occasionColumns } from './occasions.ts';
import { prepareFeet, readingsOfAFoot } from './prepareFeet.ts';
import { prepareHorses } from './prepareHorses.ts';
import { prepareVisits, visitsFromFeet } from './prepareVisits.ts';
import type { Problem } from './problem.ts';
import { builtInRanges, type Ranges } from './ranges.ts';
import { VisitIndex } from './visitIndex.ts';

export interface HerdTables {
  /** One row a foot each time it is measured; `horse_id`, `date` and `limb` are required. */
  readonly feet: Columns;
  readonly horses?: Columns;
  readonly visits?: Columns;
}

export interface HerdOptions {
  /** In place of all built-in ranges. */
  readonly ranges?: Ranges;
  /** The share of the body weight on the two front feet, 0 to 1. */
  readonly shareInFront?: number;
  /** What girth² times length is divided by, in cm³/kg. */
  readonly weightDivisor?: number;
  /** What reading the files found: it comes first in the herd's problems, and rows without a key or that stand twice aren't named again. */
  readonly problems?: readonly Problem[];
  /**
   * How large the error of one reading is, in place of what the herd's own repeats and the table of measured columns say:
   * for a piece of a herd, whose repeats are too few. Where it is empty, no errors are worked out.
   */
  readonly errors?: readonly ColumnError[];
  /** Names of the files, for the problems. */
  readonly files?: { readonly feet?: string; readonly horses?: string; readonly visits?: string };
}

export interface Herd {
  /** Every reading, with the built-in computed columns. */
  readonly feet: FootSheet;
  /** One row a foot, day and moment, repeats averaged, with the same columns: what the pages show and compare. */
  readonly occasions: FootSheet;
  readonly horses: FootSheet;
  readonly visits: FootSheet;
  /** One row a foot and gap between one visit's work and the next. */
  readonly intervals: FootSheet;
  readonly problems: readonly Problem[];
  /** How large the error of one reading is, column by column, and how that is known. */
  readonly errors: readonly ColumnError[];
  readonly ranges: Ranges;
  /** Columns of the feet that stood in the table and were computed or joined afresh. */
  readonly recomputed: readonly string[];
  /** The visits as they are looked up, for intervals of other outcomes. */
  readonly visitIndex: VisitIndex;
}

/** The middle of the published 55 to 60 percent at rest. */
export const defaultShareInFront = 0.575;
/** One standard error of that share, were every value of the published 55 to 60 percent as likely. */
const shareInFrontError = 0.05 / Math.sqrt(12);
/** Carroll & Huntington 1988, in cm³/kg. */
export const defaultWeightDivisor = 11900;
/** One standard error of a weight by girth and length, as a share: 4.5 percent mean error (Hucul horses) times √(π/2). */
const weightFormulaError = 0.045 * Math.sqrt(Math.PI / 2);

const derivedOfFeet = new Set([
  ...measures.filter(({ table }) => table === 'feet').map(({ name }) => name),
  ...['end', 'side', 'poorly_seen', 'share_in_front', 'body_weight_kg', 'days_since_work', 'readings'],
]);
const ofHorses = new Set(['build', 'birth_year', 'weight_kg', 'girth_cm', 'length_cm']);
const ofVisits = new Set(['farrier', 'work', 'therapeutic']);
const derivedOfHorses = new Set([
  ...measures.filter(({ table }) => table === 'horses').map(({ name }) => name),
  ...['weight_divisor', ...summaryNames],
]);

/**
 * A herd from its tables: settled units and words, errors from its own repeats, every built-in computed column,
 * horse and visit joined to each foot, repeats averaged, and the intervals between visits.
 * @param tables  as `readTable` gives them, or columns made by hand: dates as ISO text or day numbers, limbs in any words;
 *   `repeat` and `moment` may be left out (`between`), as may the tables of horses and visits
 * @returns sheets of which nothing is shared; a cell that couldn't be used is missing and has a row in `problems`
 * @throws HerdError where a required column is missing or a setting is impossible
 */
export function herd(tables: HerdTables, options: HerdOptions = {}): Herd {
  const { ranges = builtInRanges, shareInFront = defaultShareInFront, weightDivisor = defaultWeightDivisor } = options;
  const files = { feet: 'feet', horses: 'horses', visits: 'visits', ...options.files };
  checkSettings(shareInFront, weightDivisor);

  const read = normalise(tables.feet, 'feet', files.feet);
  const readHorses = tables.horses && normalise(tables.horses, 'horses', files.horses);
  const readVisits = tables.visits && normalise(tables.visits, 'visits', files.visits);
  const visitColumns = prepareVisits(readVisits?.columns ?? visitsFromFeet(read.columns));

  const horses = prepareHorses(readHorses && without(derivedOfHorses, readHorses.columns), read.columns, files.horses);
  const given = (columns: Columns) => options.errors?.filter(({ name }) => Object.hasOwn(columns, name));
  const horseErrors = given(horses.columns) ?? columnErrors(horses.columns);
  const weighed = horseSheet(withErrors(horses.columns, horseErrors), weightDivisor);

  const { kept, recomputed } = withoutDerived(read.columns, tables.horses !== undefined, tables.visits !== undefined);
  const prepared = prepareFeet(kept, files.feet);
  const poor = prepared.columns.poorly_seen.values as Float64Array;
  const errors = given(prepared.columns) ?? columnErrors(prepared.columns, readingsOfAFoot(prepared.columns), poor);
  const feetColumns = withErrors(prepared.columns, errors, poor);
  const horseNames = (toColumn(feetColumns.horse_id) as TextColumn).levels;
  const visitIndex = indexOf(visitColumns, horseNames);

  const complete = (columns: Columns): Columns => ({
    ...columns,
    ...without(new Set(Object.keys(columns)), joinVisits(columns, visitColumns, visitIndex)),
    ...joinHorses(columns, weighed),
    share_in_front: constant(rowCount(columns), '1', shareInFront, shareInFrontError),
  });
  const visits = FootSheet.from(titled(visitColumns), ['horse_id', 'date'], { relations: [] });
  const feet = once(() => footSheet(complete(feetColumns), ['horse_id', 'date', 'limb', 'moment', 'repeat']));
  const occasions = once(() =>
    footSheet(complete(occasionColumns(feetColumns)), ['horse_id', 'date', 'limb', 'moment']),
  );
  const summed = once(() => {
    const listed = weighed.column('horse_id').values as readonly string[];
    const columns = { ...withErrors(horses.columns, horseErrors), ...horseSummaries(occasions(), listed) };
    return horseSheet(columns, weightDivisor);
  });
  const intervals = once(() => intervalSheet({ occasions: occasions(), visits, visitIndex }));
  return {
    // Each is made when first asked for: few pages need all of them.
    get feet() {
      return feet();
    },
    get occasions() {
      return occasions();
    },
    get horses() {
      return summed();
    },
    get intervals() {
      return intervals();
    },
    visits,
    problems: allProblems(options.problems, [
      ...read.problems,
      ...prepared.problems,
      ...(readHorses?.problems ?? []),
      ...horses.problems,
      ...(readVisits?.problems ?? []),
      ...visitProblems(visitColumns, visitIndex, files.visits),
    ]),
    errors: [...errors, ...horseErrors],
    ranges,
    recomputed,
    visitIndex,
  };
}

/**
 * The intervals with the start and end of any columns of the occasions, for other questions than the herd's own.
 * @param outcomes  names of number columns of `occasions`; left out: the herd's own
 * @example intervalSheet(herd(tables), ['frog_ratio']).column('frog_ratio_change')
 */
export function intervalSheet(
  { occasions, visits, visitIndex }: Pick<Herd, 'occasions' | 'visits' | 'visitIndex'>,
  outcomes?: readonly string[],
): FootSheet {
  const { columns, startVisits } = intervalColumns(occasions, visitIndex, outcomes);
  for (const name of ['farrier', 'work', 'therapeutic']) columns[name] = gather(visits.column(name), startVisits);
  const computed = intervalMeasures(columns);
  return FootSheet.from(titled(columns), ['horse_id', 'limb', 'start_date'], { relations: [], computed });
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function footSheet(columns: Columns, keys: readonly string[]): FootSheet {
  return FootSheet.from(titled(columns), keys, { computed: measuresOf('feet') });
}

function horseSheet(horses: Columns, weightDivisor: number): FootSheet {
  const weight_divisor = constant(rowCount(horses), 'cm3/kg', weightDivisor, weightDivisor * weightFormulaError);
  const columns: Columns = { ...horses, weight_divisor };
  return FootSheet.from(titled(columns), ['horse_id'], { relations: [], computed: measuresOf('horses') });
}

function measuresOf(table: Measure['table']): Pick<Measure, 'name' | 'title' | 'formula' | 'unit'>[] {
  const those = measures.filter((measure) => measure.table === table);
  return those.map(({ name, title, formula, unit }) => ({ name, title, formula, unit }));
}

function constant(rows: number, unit: string, value: number, error: number): ColumnInput {
  return { unit, values: new Float64Array(rows).fill(value), error: new Float64Array(rows).fill(error) };
}

const titles = new Map([...context, ...measured, ...measures].map(({ name, title }) => [name, title]));

/** Columns with the titles that people know them by. */
function titled(columns: Columns): Columns {
  const all: Columns = Object.create(null);
  for (const [name, input] of Object.entries(columns)) {
    const title = titles.get(name) ?? derivedColumn(name)?.title ?? name;
    const text = input instanceof TextColumn ? new TextColumn(input.codes, input.levels) : undefined;
    all[name] = text === undefined ? { ...input, ...{ title } } : Object.assign(text, { title });
  }
  return all;
}

/**
 * A table that was written by this program brings computed and joined columns along; they are made afresh. What feet
 * say of their horse has gone to the horses; what they say of a visit stays where no visits table says more.
 */
function withoutDerived(feet: Columns, horses: boolean, visits: boolean): { kept: Columns; recomputed: string[] } {
  const kept: Columns = Object.create(null);
  const recomputed: string[] = [];
  for (const [name, column] of Object.entries(feet)) {
    const derived = derivedOfFeet.has(name) || derivedOfHorses.has(name);
    if (derived || (horses && ofHorses.has(name)) || (visits && ofVisits.has(name))) recomputed.push(name);
    else if (!ofHorses.has(name)) kept[name] = column;
  }
  return { kept, recomputed };
}

function without(names: ReadonlySet<string>, columns: Columns): Columns {
  return Object.fromEntries(Object.entries(columns).filter(([name]) => !names.has(name)));
}

function indexOf(visits: Columns, horses: readonly string[]): VisitIndex {
  const text = (name: string): TextColumn | undefined =>
    Object.hasOwn(visits, name) ? (toColumn(visits[name]) as TextColumn) : undefined;
  const date = visits.date.values as Float64Array;
  return new VisitIndex({ horse: text('horse_id')!, date, limb: text('limb'), work: text('work') }, horses);
}

function visitProblems(visits: Columns, { duplicates }: VisitIndex, file: string): Problem[] {
  const horse = toColumn(visits.horse_id) as TextColumn;
  return duplicates.map((row) => ({
    code: 'same-row-twice',
    file,
    row: row + 2,
    column: 'date',
    value: horse.at(row),
    expected: say`one visit a horse and day`,
    remedy: say`Merge the two rows; meanwhile the first counts`,
  }));
}

/** What reading a file finds too, with the file's own row numbers. */
const seenByReading = new Set(['same-row-twice', 'no-key']);

function allProblems(read: readonly Problem[] | undefined, found: readonly Problem[]): Problem[] {
  return read === undefined ? [...found] : [...read, ...found.filter(({ code }) => !seenByReading.has(code))];
}

function checkSettings(shareInFront: number, weightDivisor: number): void {
  if (!(shareInFront > 0 && shareInFront < 1))
    throw new HerdError(
      say`A share of weight in front of ${shareInFront}`,
      say`a share between 0 and 1`,
      say`Write 0.575 for 57.5 percent`,
    );
  if (!(weightDivisor > 0 && weightDivisor < Infinity))
    throw new HerdError(
      say`A weight divisor of ${weightDivisor}`,
      say`a number of cm³/kg above 0`,
      say`The usual one is 11900`,
    );
}

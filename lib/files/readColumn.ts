import { type Column, TextColumn } from '../sheet/column.ts';
import { conversion, convertible, parseUnit } from '../sheet/dimension.ts';
import { say } from '../words/say.ts';
import type { CellStore } from './cellStore.ts';
import type { ColumnPlan } from './columnPlan.ts';
import { type DateOrder, readDates } from './dateOrder.ts';
import { unguard } from './guard.ts';
import { lookedUp, rowsOf } from './lookedUp.ts';
import { isMissing } from './missingWords.ts';
import { type DecimalMark, parseQuantity } from './parseQuantity.ts';
import type { ProblemLog } from './problemLog.ts';
import type { ProblemCode } from './problems.ts';

/** By what the file's plain numbers are multiplied. */
export function headingFactor({ unit, headingUnit }: ColumnPlan): number {
  return headingUnit === undefined ? 1 : conversion(parseUnit(headingUnit), parseUnit(unit));
}

/** Turns the cells of one column into its values; every cell that can't be used goes to the log. */
export function readColumn(
  plan: ColumnPlan,
  store: CellStore,
  mark: DecimalMark,
  dates: 'dmy' | 'mdy' | undefined,
  log: ProblemLog,
): { column: Column; order?: DateOrder } {
  switch (plan.kind) {
    case 'number':
      return { column: readNumbers(plan, store, mark, log) };
    case 'date': {
      const { values, order } = readDates(plan, store, dates, log);
      return { column: { kind: 'date', unit: 'd', values }, order };
    }
    case 'boolean':
      return { column: readYesNo(plan, store, log) };
    case 'text':
      return { column: readText(plan, store, log) };
  }
}

function readNumbers(plan: ColumnPlan, store: CellStore, mark: DecimalMark, log: ProblemLog): Column {
  const { values, oddRows, oddCodes } = store;
  const factor = headingFactor(plan);
  if (factor !== 1) for (let row = 0; row < values.length; row++) values[row] = scaled(values[row], factor);
  const texts = store.texts.texts();
  const found = texts.map((text) => numberIn(text, plan, mark));
  for (let odd = 0; odd < oddRows.length; odd++) {
    const row = oddRows[odd];
    const { value, fault } = found[oddCodes[odd]];
    values[row] = value;
    if (fault) log.cell(fault, row, plan.name, texts[oddCodes[odd]], expectedNumber(plan, fault));
  }
  return { kind: 'number', unit: plan.unit, values };
}

/** The value of one cell of numbers in the column's own unit, `NaN` with the reason where it can't be used. */
export function numberIn(text: string, plan: ColumnPlan, mark: DecimalMark): { value: number; fault?: ProblemCode } {
  const missing = Number.NaN;
  const quantity = parseQuantity(text, mark);
  if ('missing' in quantity) return { value: missing };
  if ('fault' in quantity) {
    const faults = {
      'not a number': 'not-a-number',
      'two readings': 'two-readings',
      'unknown unit': 'unknown-unit',
    } as const;
    return { value: missing, fault: faults[quantity.fault] };
  }
  const from = parseUnit(quantity.unit ?? plan.headingUnit ?? plan.unit);
  const to = parseUnit(plan.unit);
  if (!convertible(from, to)) return { value: missing, fault: 'unknown-unit' };
  const value = scaled(quantity.value, conversion(from, to));
  const [least, most] = plan.schema?.within ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (!(value >= least && value <= most)) return { value: missing, fault: 'beyond-anatomy' };
  return { value };
}

/** 1.1 cm are 11 mm, not 11.000000000000002: a product within rounding of a short decimal is that decimal. */
function scaled(value: number, factor: number): number {
  const product = value * factor;
  const short = Math.round(product * 1e6) / 1e6;
  return Math.abs(short - product) <= 4 * Number.EPSILON * Math.abs(product) ? short : product;
}

const examples: Readonly<Record<string, string>> = {
  deg: say`an angle in degrees, such as 52 or 52.5°`,
  mm: say`a length in mm, or with its unit, such as 85, 8.5 cm or 3 1/4 in`,
  cm: say`a length in cm, or with its unit, such as 180 or 71 in`,
  kg: say`a weight in kg, or with its unit, such as 480 or 1050 lb`,
};

/** What a column of numbers expects, in words. */
export function expectedNumber(plan: ColumnPlan, fault: ProblemCode): string {
  if (fault === 'beyond-anatomy' && plan.schema?.within) {
    const [least, most] = plan.schema.within;
    return say`${least} to ${most}${plan.unit === '1' ? '' : ` ${plan.unit}`}`;
  }
  return Object.hasOwn(examples, plan.unit) ? examples[plan.unit] : say`a number`;
}

function readYesNo(plan: ColumnPlan, store: CellStore, log: ProblemLog): Column {
  const understand = plan.schema?.understand ?? trueOrFalse;
  const levels = understood(plan, store, understand, log);
  const numbers = Float64Array.from(levels, (word) => (word === undefined ? Number.NaN : word === 'yes' ? 1 : 0));
  return { kind: 'boolean', unit: '1', values: lookedUp(store.codes, numbers) };
}

/** `yes` or `no` for the two words that a program writes. */
export function trueOrFalse(text: string): string | undefined {
  return /^true$/i.test(text) ? 'yes' : /^false$/i.test(text) ? 'no' : undefined;
}

function readText(plan: ColumnPlan, store: CellStore, log: ProblemLog): Column {
  const understand = plan.schema?.understand;
  const levels = understand ? understood(plan, store, understand, log) : store.texts.texts().map(unguard);
  return recoded(store.codes, levels);
}

/** For each text of a column with words of its own the word it means; a text that means none is logged in every row. */
function understood(
  { name, schema }: ColumnPlan,
  store: CellStore,
  understand: (text: string) => string | undefined,
  log: ProblemLog,
): (string | undefined)[] {
  const texts = store.texts.texts();
  const words = texts.map((text) => understand(unguard(text)));
  const faulty = texts.map((text, code) => words[code] === undefined && !isMissing(unguard(text)));
  const expected = (schema?.words ?? ['TRUE', 'FALSE']).join(', ');
  for (const row of rowsOf(store.codes, faulty)) log.cell('not-a-word', row, name, texts[store.codes[row]], expected);
  return words;
}

/** Codes into a dictionary that holds each text once; texts that became nothing are missing. */
function recoded(codes: Int32Array, texts: readonly (string | undefined)[]): TextColumn {
  const known = new Map<string, number>();
  const target = Int32Array.from(texts, (text) => {
    if (text === undefined || text === '') return -1;
    let code = known.get(text);
    if (code === undefined) {
      code = known.size;
      known.set(text, code);
    }
    return code;
  });
  if (target.some((to, from) => to !== from))
    for (let row = 0; row < codes.length; row++) if (codes[row] >= 0) codes[row] = target[codes[row]];
  return new TextColumn(codes, [...known.keys()]);
}

import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import type { CellStore } from './cellStore.ts';
import type { ColumnPlan } from './columnPlan.ts';
import { unguard } from './guard.ts';
import { lookedUp, rowsOf } from './lookedUp.ts';
import { isMissing } from './missingWords.ts';
import { type DateReading, isSerialDay, parseDate } from './parseDate.ts';
import type { ProblemLog } from './problemLog.ts';
import type { ProblemCode } from './problems.ts';

/** `iso`: no date depends on the order. `undecided`: some do, and the column leaves it open or contradicts itself. */
export type DateOrder = 'iso' | 'dmy' | 'mdy' | 'undecided';

/**
 * The order of day and month in a column, from all its dates: one day beyond 12 decides for all.
 * @example dateOrder([{ dmy: 20546, mdy: 20517 }]) // 'undecided'
 */
export function dateOrder(readings: Iterable<DateReading>): DateOrder {
  let open = false;
  let dayFirst = false;
  let monthFirst = false;
  for (const { dmy, mdy } of readings) {
    if (Number.isNaN(mdy)) dayFirst = true;
    else if (Number.isNaN(dmy)) monthFirst = true;
    else if (dmy !== mdy) open = true;
  }
  if (dayFirst && monthFirst) return 'undecided';
  if (dayFirst) return 'dmy';
  if (monthFirst) return 'mdy';
  return open ? 'undecided' : 'iso';
}

/** Turns a column of dates into day numbers. `forced` is the order that the user states. */
export function readDates(
  plan: ColumnPlan,
  store: CellStore,
  forced: 'dmy' | 'mdy' | undefined,
  log: ProblemLog,
): { values: Float64Array; order: DateOrder } {
  const texts = store.texts.texts();
  const readings = texts.map((text) => parseDate(unguard(text)));
  const dates = readings.filter((reading) => reading !== undefined);
  const ordered = dates.some(({ dmy, mdy }) => dmy !== mdy);
  const order = forced !== undefined && ordered ? forced : dateOrder(dates);
  const contradicts = order === 'undecided' && dates.some(({ dmy, mdy }) => Number.isNaN(dmy) || Number.isNaN(mdy));

  const days = readings.map((reading) => dayOf(reading, order));
  const faults = readings.map((reading, code) => faultOf(texts[code], reading, days[code], plan));
  const usable = Float64Array.from(days, (day, code) => (faults[code] ? Number.NaN : day));
  const values = lookedUp(store.codes, usable);
  let firstOpen = -1;
  let open = 0;
  for (const row of rowsOf(store.codes, faults)) {
    const code = store.codes[row];
    const fault = faults[code]!;
    if (fault !== 'date-order' || contradicts || forced) {
      log.cell(fault, row, plan.name, texts[code], detailOf(fault, order, contradicts));
      continue;
    }
    if (open++ === 0) firstOpen = row;
    log.keep(plan.name, row, texts[code]);
  }
  if (open > 0) {
    const detail = counted(open, {
      one: say`dates whose order of day and month is clear; 1 date here could be either`,
      other: say`dates whose order of day and month is clear; ${open} dates here could be either`,
    });
    log.inRow('date-order', firstOpen, plan.name, texts[store.codes[firstOpen]], detail);
  }
  return { values, order };
}

/** The day that a reading means in a column of that order; `NaN` where it stays open. */
export function dayOf(reading: DateReading | undefined, order: DateOrder): number {
  if (reading === undefined) return Number.NaN;
  const { dmy, mdy } = reading;
  if (order === 'dmy' || order === 'mdy') return reading[order];
  if (dmy === mdy || Number.isNaN(mdy)) return dmy;
  return Number.isNaN(dmy) ? mdy : Number.NaN;
}

/** Why a text can't be used as a date, `undefined` where it can or says that there is none. */
export function faultOf(
  text: string,
  reading: DateReading | undefined,
  day: number,
  plan: ColumnPlan,
): ProblemCode | undefined {
  if (reading === undefined) {
    if (isMissing(unguard(text))) return undefined;
    if (isSerialDay(text)) return 'serial-date';
    return /^.*\D'?[789]\d$/s.test(text.trim()) ? 'two-digit-year' : 'not-a-date';
  }
  if (Number.isNaN(day)) return 'date-order';
  const within = plan.schema?.within;
  return within && (day < within[0] || day > within[1]) ? 'unlikely-year' : undefined;
}

function detailOf(fault: ProblemCode, order: DateOrder, contradicts: boolean): string {
  if (fault !== 'date-order') return '';
  if (contradicts)
    return say`one order of day and month in the whole column; others in it say day first and others month first`;
  return order === 'dmy' ? say`day before month` : say`month before day`;
}

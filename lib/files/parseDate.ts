import { dayMs } from '../sheet/days.ts';

/**
 * What a text says as a date, in days since 1970-01-01, under either order of day and month: the two are the same where
 * the order doesn't matter, and `NaN` where that order makes no date.
 */
export interface DateReading {
  readonly dmy: number;
  readonly mdy: number;
}

// English and German, by how they begin.
const months = ['jan', 'feb', 'mar|mär|mrz', 'apr', 'may|mai', 'jun', 'jul', 'aug', 'sep', 'oct|okt', 'nov', 'dec|dez'];
const short = 'jan|feb|mar|mär|mrz|apr|may|mai|june?|july?|juni|juli|aug|sept?|oct|okt|nov|dec|dez';
const long =
  'january|januar|february|februar|march|märz|april|august|september|october|oktober|november|december|dezember';
const month = `(${short}|${long})\\.?`;
const part = '[\\s./,-]+';

const yearFirst = /^(\d{4})([-/.])(\d{1,2})\2(\d{1,2})$/;
const compact = /^(\d{4})(\d{2})(\d{2})$/;
const numeric = /^(\d{1,2})\s*([-/. ])\s*(\d{1,2})\s*\2\s*(\d{2}|\d{4})\.?$/;
const dayFirstWords = new RegExp(`^(\\d{1,2})(?:st|nd|rd|th)?(?:${part}(?:of )?)?${month}${part}'?(\\d{2}|\\d{4})$`);
const monthFirstWords = new RegExp(`^${month}(?:${part})?(\\d{1,2})(?:st|nd|rd|th)?${part}'?(\\d{2}|\\d{4})$`);
const yearFirstWords = new RegExp(`^(\\d{4})${part}${month}${part}(\\d{1,2})$`);
const timeOfDay = /(?:t|\s+)\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?\s*(?:[ap]\.?m\.?)?\s*(?:z|[+-]\d{2}:?\d{2})?$/;
const weekday = /^(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)(?:day|sday|nesday|rsday|urday)?\.?,?\s+/;

/**
 * Reads a calendar date: ISO, day and month in either order, or with the month's English or German name. A time of day after it is
 * left out. A year of two digits is 20yy up to 69; from 70 on it is no date, because it may be either century.
 * @returns `undefined` where the text is no date in either order
 * @example parseDate('03/04/2026') // { dmy: 20546, mdy: 20516 }
 */
export function parseDate(text: string): DateReading | undefined {
  if (text.length > 60) return undefined;
  const said = text.trim().toLowerCase().replace(timeOfDay, '').replace(weekday, '').replace(/\s+/g, ' ');
  const iso = yearFirst.exec(said);
  if (iso) return plain(iso[1], iso[3], iso[4]);
  const short = compact.exec(said);
  if (short) return plain(short[1], short[2], short[3]);
  const numbers = numeric.exec(said);
  if (numbers) {
    const [, first, , second, year] = numbers;
    const reading = { dmy: days(year, second, first), mdy: days(year, first, second) };
    return Number.isNaN(reading.dmy) && Number.isNaN(reading.mdy) ? undefined : reading;
  }
  const dayFirst = dayFirstWords.exec(said);
  if (dayFirst) return plain(dayFirst[3], monthNumber(dayFirst[2]), dayFirst[1]);
  const monthFirst = monthFirstWords.exec(said);
  if (monthFirst) return plain(monthFirst[3], monthNumber(monthFirst[1]), monthFirst[2]);
  const words = yearFirstWords.exec(said);
  if (words) return plain(words[1], monthNumber(words[2]), words[3]);
  return undefined;
}

function monthNumber(name: string): string {
  return String(months.findIndex((begins) => begins.split('|').includes(name.slice(0, 3))) + 1);
}

function plain(year: string, month: string, day: string): DateReading | undefined {
  const value = days(year, month, day);
  return Number.isNaN(value) ? undefined : { dmy: value, mdy: value };
}

function days(year: string, month: string, day: string): number {
  const full = year.length === 4 ? Number(year) : Number(year) < 70 ? 2000 + Number(year) : Number.NaN;
  const date = new Date(0);
  date.setUTCFullYear(full, Number(month) - 1, Number(day));
  // The thirtieth of February would be a day of March.
  const stands = date.getUTCMonth() === Number(month) - 1 && date.getUTCDate() === Number(day);
  return stands ? date.getTime() / dayMs : Number.NaN;
}

/** Whether a text is a day number as spreadsheets keep dates: `46084`, from 1954 to 2119. */
export function isSerialDay(text: string): boolean {
  const said = text.trim();
  return /^\d{5}(?:\.\d+)?$/.test(said) && Number(said) >= 20_000 && Number(said) < 80_000;
}

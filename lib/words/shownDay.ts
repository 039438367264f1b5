import { say } from './say.ts';

const dayMs = 86_400_000;

// English is read in places that write day and month in either order, so it is given year-month-day, as in Sweden.
const format = new Intl.DateTimeFormat(say`sv-SE`, {
  year: 'numeric',
  month: '2-digit',
  day: '2-digit',
  timeZone: 'UTC',
});

/** A date as the reader's language writes it in figures; English year-month-day. */
export function shownDay(daysSince1970: number): string {
  return format.format(daysSince1970 * dayMs);
}

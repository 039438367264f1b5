const dayLength = 86_400_000;

/**
 * Days since 1970-01-01 of an ISO calendar date.
 * @param text  `2026-03-09`; a time after it is an error, so that no clock or zone can move the day
 * @returns a whole number, or `NaN` where the text is no such date or the month has no such day
 * @example daysFromIso('1970-01-31') // 30
 */
export function daysFromIso(text: string): number {
  const parts = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!parts) return Number.NaN;
  const days = Date.UTC(Number(parts[1]), Number(parts[2]) - 1, Number(parts[3])) / dayLength;
  return isoFromDays(days) === text ? days : Number.NaN;
}

/** The ISO date of a day number; `''` for a missing one: `isoFromDays(30) // '1970-01-31'`. */
export function isoFromDays(days: number): string {
  return Number.isNaN(days) ? '' : new Date(days * dayLength).toISOString().slice(0, 10);
}

/** A day in milliseconds. */
export const dayMs = 86_400_000;

/**
 * Whole days since 1970-01-01 of an ISO date; `NaN` for anything else, a 30th of February included.
 * @example daysFromIso('2026-01-01') // 20454
 */
export function daysFromIso(text: string): number {
  // Whatever else can be read as a day is not written like this.
  const days = Date.parse(text) / dayMs;
  return isoFromDays(days) === text ? days : Number.NaN;
}

/**
 * The ISO date of a day number, `''` for a missing one. A fraction of a day is left out.
 * @example isoFromDays(20454) // '2026-01-01'
 */
export function isoFromDays(days: number): string {
  const date = new Date(Math.floor(days) * dayMs);
  return Number.isNaN(date.getTime()) ? '' : date.toISOString().slice(0, 10);
}

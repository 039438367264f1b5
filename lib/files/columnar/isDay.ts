/** Whether a date can be written as a day: a median of dates may lie between two, or a date beyond what 32 bits hold. */
export function isDay(value: number): boolean {
  return Number.isNaN(value) || (value | 0) === value;
}

import { say } from './say.ts';

const format = new Intl.NumberFormat(say`en`, { maximumFractionDigits: 0 });

/** A whole number with the sign for thousands of the reader's language. */
export function wholeNumber(count: number): string {
  return format.format(count);
}

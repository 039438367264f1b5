import { say } from './say.ts';

/** A number with all its digits, a true minus sign and the decimal sign of the reader's language. */
export function shownNumber(value: number): string {
  return String(value).replace('.', say`.`).replace(/^-/, '−');
}

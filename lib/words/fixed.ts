import { say } from './say.ts';

/** A number with fixed decimals and the decimal sign of the reader's language. */
export function fixed(value: number, digits: number): string {
  return value.toFixed(digits).replace('.', say`.`);
}

import { say } from '../../words/say.ts';
import { FormulaError, type Place } from './syntax.ts';

/** An error at a place of a formula: what was found and what was expected, where, and the way out. */
export function complaint({ start, end }: Place, found: string, wayOut: string): FormulaError {
  return new FormulaError(say`${found} (characters ${start} to ${end}). ${wayOut}`, start, end);
}

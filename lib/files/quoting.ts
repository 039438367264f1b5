import { daysFromIso } from '../sheet/days.ts';
import { isMissing } from './missingWords.ts';
import { plainNumber } from './plainNumber.ts';

/**
 * Whether a text needs quotes in a file: because of a delimiter (also those of other countries' spreadsheets), a quote, a
 * line break, or space around it.
 * @source RFC 4180, section 2
 */
export function needsQuotes(text: string): boolean {
  return /[",;\t\r\n]/.test(text) || text !== text.trim();
}

/** Whether a text could be taken for a number, a date, yes or no, or for missing: in quotes it stays a text. */
export function looksLikeValue(text: string): boolean {
  return (
    isMissing(text) ||
    /^(?:true|false)$/i.test(text) ||
    !Number.isNaN(plainNumber(text, '.', false)) ||
    !Number.isNaN(daysFromIso(text))
  );
}

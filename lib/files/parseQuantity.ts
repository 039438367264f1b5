import { isMissing } from './missingWords.ts';
import { unitCode } from './unitCode.ts';

/** What stands before the decimals of a number. */
export type DecimalMark = '.' | ',';

/** A number as it stands in a cell, with its unit where one is written; or why there is none. */
export type Quantity =
  | { readonly value: number; readonly unit?: string }
  | { readonly missing: true }
  | { readonly fault: 'not a number' | 'two readings' | 'unknown unit' };

const longest = 60;
const vulgar: Readonly<Record<string, string>> = {
  ...{ '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5' },
  ...{ '⅙': '1/6', '⅚': '5/6', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' },
};

const fraction = /^([+-]?)(?:(\d+)(?:\s*-\s*|\s+))?(\d+)\s*\/\s*(\d+)(.*)$/s;
const decimal = /^([+-]?)([\d.,'’\u00a0\u202f\u2009]*\d[.,]?(?:e[+-]?\d+)?)(.*)$/is;

/**
 * Reads a number as people write one: `52°`, `8.5 cm`, `1,5 cm`, `3 1/4 in`, `3¼"`, `1,234.5`.
 * A text that has two readings (`1,234` where the file's decimal mark is a point) is not read.
 * @param mark  the file's decimal mark
 * @returns the value and the unit's UCUM code; nothing is converted
 * @example parseQuantity('3 1/4"', '.') // { value: 3.25, unit: '[in_i]' }
 */
export function parseQuantity(text: string, mark: DecimalMark): Quantity {
  if (isMissing(text)) return { missing: true };
  if (text.length > longest) return { fault: 'not a number' };
  const shown = text
    .trim()
    .replace(/[−‐‑]/g, '-')
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞]/g, (sign) => ` ${vulgar[sign]}`)
    .replace(/\u2044/g, '/')
    .trim();

  const parts = fraction.exec(shown);
  if (parts) {
    const [, sign, whole, above, below, rest] = parts;
    const part = Number(above) / Number(below);
    // 52/51 is two readings in one cell, not a fraction.
    if (!(part < 1)) return { fault: 'not a number' };
    return withUnit((sign === '-' ? -1 : 1) * (Number(whole ?? 0) + part), rest);
  }

  const written = decimal.exec(shown);
  if (!written) return { fault: 'not a number' };
  const size = decimalValue(written[2], mark);
  if (size === undefined) return { fault: 'two readings' };
  return withUnit(written[1] === '-' ? -size : size, written[3]);
}

function withUnit(value: number, rest: string): Quantity {
  if (!Number.isFinite(value)) return { fault: 'not a number' };
  if (rest.trim() === '') return { value };
  const unit = unitCode(rest);
  if (unit !== undefined) return { value, unit };
  return { fault: /^\s*(?:\p{L}[\p{L}.]*|[°º"'%])\s*$/u.test(rest) ? 'unknown unit' : 'not a number' };
}

/** The value of digits with marks in them; `NaN` where the marks make no number, `undefined` where they make two. */
function decimalValue(written: string, mark: DecimalMark): number | undefined {
  // Narrow spaces and apostrophes only ever part thousands.
  const parted = /['’\u00a0\u202f\u2009]/.test(written);
  if (parted && !/^\d{1,3}(?:['’\u00a0\u202f\u2009]\d{3})+(?:[.,]\d*)?$/.test(written)) return Number.NaN;
  const digits = written.replace(/['’\u00a0\u202f\u2009]/g, '');
  const marks = digits.replace(/[^.,]/g, '');
  if (marks === '') return Number(digits);

  const last = marks[marks.length - 1];
  const other = last === '.' ? ',' : '.';
  if (marks.length > 1) {
    // All marks but the last part thousands; the last one does too where it is the same sign.
    const grouping = marks[0];
    const pattern =
      grouping === last ? `^\\d{1,3}(\\${last}\\d{3})+$` : `^\\d{1,3}(\\${other}\\d{3})+\\${last}\\d*(e[+-]?\\d+)?$`;
    if (!new RegExp(pattern, 'i').test(digits)) return Number.NaN;
    const plain = digits.split(grouping).join('');
    return Number(plain.replace(',', '.'));
  }
  if (last !== mark && !parted && /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits)) return undefined;
  return Number(digits.replace(',', '.'));
}

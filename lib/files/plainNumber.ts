const longest = 400;

/**
 * The value of a number that is written plainly: sign, digits with one decimal mark, exponent; no unit, no sign for thousands.
 * @param strict  whether `007` is no number but a name
 * @returns `NaN` for anything else, and for what is too large for a number
 * @example plainNumber('8,5', ',', true) // 8.5
 */
export function plainNumber(text: string, mark: '.' | ',', strict: boolean): number {
  if (text.length > longest || (mark === ',' && text.includes('.'))) return Number.NaN;
  const pointed = mark === ',' ? text.replace(',', '.') : text;
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(pointed)) return Number.NaN;
  if (strict && /^[+-]?0\d/.test(pointed)) return Number.NaN;
  const value = Number(pointed);
  return Number.isFinite(value) ? value : Number.NaN;
}

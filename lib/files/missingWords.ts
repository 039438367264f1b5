const words = new Set([
  ...['na', 'n/a', 'n.a.', '#n/a', 'nan', 'null', 'nil', 'nm', 'nd', '-', '--', '–', '—', '−', '.', '?', '??', '*'],
  ...['not measured', 'not taken', 'not done', 'not known', 'not seen', 'not available', 'not applicable'],
  ...['unknown', 'missing', 'unmeasured', 'blank', 'empty'],
]);

/**
 * Whether a cell says that there is no value: `NA`, `n/a`, `-`, `?`, `nm`, `not measured`.
 * @example isMissing('N/A') // true
 */
export function isMissing(text: string): boolean {
  const said = text.trim();
  return said === '' || (said.length < 20 && words.has(said.toLowerCase()));
}

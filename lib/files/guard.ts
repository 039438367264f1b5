/**
 * A cell that a spreadsheet would run begins, perhaps after spaces, with `=`, `+`, `-` or `@` (also in full width), or with
 * a tab or a line break. Apostrophes before that are part of the rule, so that taking one off undoes putting one on.
 * @source OWASP, CSV injection: the characters that begin a formula
 */
const runs = /^'*(?:[\t\r\n]|\s*[=+\-@＝＋－＠])/;

/**
 * The text with an apostrophe before it where a spreadsheet would run it.
 * @example guard('=1+1') // "'=1+1"
 */
export function guard(text: string): string {
  return runs.test(text) ? `'${text}` : text;
}

/**
 * Takes off the apostrophe that `guard` puts on: `unguard(guard(text))` is `text`, whatever the text.
 * @example unguard("'=1+1") // '=1+1'
 */
export function unguard(text: string): string {
  return text.startsWith("'") && runs.test(text) ? text.slice(1) : text;
}

/**
 * Marks words that a reader sees, so that they can be gathered into one list and built into pages of another language
 * (see docs/languages.md). As it stands it gives the text itself.
 * @param parts  English, which is the key in the tables of other languages
 * @param values  what is filled in; another language may set them in another order
 * @example say`${3} feet measured` // '3 feet measured'
 */
export function say(parts: TemplateStringsArray, ...values: readonly (string | number)[]): string {
  return String.raw({ raw: parts }, ...values);
}

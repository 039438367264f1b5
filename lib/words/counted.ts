import { say } from './say.ts';

/**
 * What is said for one and for other numbers. English has these two; the words of another language bring those of its
 * own plural categories (https://cldr.unicode.org/index/cldr-spec/plural-rules), such as `few` and `many`.
 */
export type Forms = { readonly other: string } & { readonly [form in Intl.LDMLPluralRule]?: string };

const rules = new Intl.PluralRules(say`en`);

/**
 * Words that change with a number, in the form that the reader's language has for it.
 * @param count  the number, which the forms fill in themselves
 * @example counted(feet, { one: say`${feet} foot`, other: say`${feet} feet` }) // '3 feet'
 */
export function counted(count: number, forms: Forms): string {
  return forms[rules.select(count)] ?? forms.other;
}

import type { Forms } from '../../lib/words/counted.ts';
import { type Said, saidIn } from './saidIn.ts';

/** English to another language, word for word of the interface; words that change with a number have several forms. */
export type Words = Readonly<Record<string, string | Forms>>;

/**
 * A source text with its marked words in another language; what is filled in goes where that language puts it.
 * @param words  a key that is not in it stays English
 * @throws Error where a translation leaves out what is to be filled in, or has no forms where the words change with a
 * number
 */
export function inLanguage(source: string, words: Words, tsx = false): string {
  let text = '';
  let at = 0;
  for (const said of saidIn(source, tsx)) {
    text += source.slice(at, said.start) + written(said, words, source, tsx);
    at = said.end;
  }
  return text + source.slice(at);
}

function written(said: Said, words: Words, source: string, tsx: boolean): string {
  const { key, one } = said;
  const own = Object.hasOwn(words, key) ? words[key] : undefined;
  const values = new Map(
    said.filled.map(({ name, start, end }) => [name, inLanguage(source.slice(start, end), words, tsx)]),
  );
  if (one === undefined) {
    if (typeof own === 'object') throw new Error(`“${key}” does not change with a number, but its translation does`);
    return template(key, own ?? key, values, [...values.keys()]);
  }
  if (typeof own === 'string') throw new Error(`“${key}” changes with a number, but its translation has one form`);
  const needed = said.filled.filter(({ counts }) => !counts).map(({ name }) => name);
  const forms = Object.entries(own ?? { one, other: key }).map(
    ([form, text]) => `${form}: ${template(key, text, values, needed)}`,
  );
  return `{ ${forms.join(', ')} }`;
}

function template(key: string, text: string, values: ReadonlyMap<string, string>, needed: readonly string[]): string {
  if (values.size === 0) return JSON.stringify(text);
  const left = new Set(needed);
  const places = new RegExp(`\\{(${[...values.keys()].join('|')})\\}`);
  const parts = text.split(places).map((part, i) => {
    // What the pattern captures, the names, stands between the other parts.
    if (i % 2 === 0) return part.replace(/[\\`]|\$\{/g, '\\$&');
    left.delete(part);
    return `\${${values.get(part)}}`;
  });
  if (left.size > 0) throw new Error(`The translation of “${key}” leaves out ${[...left].join(', ')}`);
  return `\`${parts.join('')}\``;
}

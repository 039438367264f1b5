import { saidIn } from './saidIn.ts';

/** English to another language, word for word of the interface. */
export type Words = Readonly<Record<string, string>>;

/**
 * A source text with its marked words in another language; what is filled in goes where that language puts it.
 * @param words  a key that is not in it stays English
 * @throws Error where a translation leaves out what is to be filled in
 */
export function inLanguage(source: string, words: Words, tsx = false): string {
  let text = '';
  let at = 0;
  for (const { key, start, end, filled } of saidIn(source, tsx)) {
    text += source.slice(at, start) + written(key, filled, words, source, tsx);
    at = end;
  }
  return text + source.slice(at);
}

function written(
  key: string,
  filled: ReturnType<typeof saidIn>[number]['filled'],
  words: Words,
  source: string,
  tsx: boolean,
): string {
  const translation = Object.hasOwn(words, key) ? words[key] : key;
  if (filled.length === 0) return JSON.stringify(translation);
  const values = new Map(
    filled.map(({ name, start, end }) => [name, inLanguage(source.slice(start, end), words, tsx)]),
  );
  const left = new Set(values.keys());
  const places = new RegExp(`\\{(${[...left].join('|')})\\}`);
  const text = translation
    .split(places)
    .map((part, i) => {
      // What the pattern captures, the names, stands between the other parts.
      if (i % 2 === 0) return part.replace(/[\\`]|\$\{/g, '\\$&');
      left.delete(part);
      return `\${${values.get(part)}}`;
    })
    .join('');
  if (left.size > 0) throw new Error(`The translation of “${key}” leaves out ${[...left].join(', ')}`);
  return `\`${text}\``;
}

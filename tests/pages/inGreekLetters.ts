import { gathered } from '../../scripts/words/gather.ts';
import type { Words } from '../../scripts/words/inLanguage.ts';

const latin = 'abcdefghijklmnopqrstuvwxyz';
const greek = 'αβγδεζηθικλμνοπρστυφχψωάέή';
/** What a translation leaves as it stands: names of what is filled in, code, addresses of links, elements. */
const kept = /(\{\w+\}|`[^`]*`|\]\([^)]*\)|<[^>]*>)/;

/** The same words in letters of another alphabet: whatever is left in Latin ones nobody could translate. */
function lettered(text: string): string {
  return text
    .split(kept)
    .map((part, i) =>
      i % 2 === 1
        ? part
        : part.replace(/[a-z]/gi, (letter) => {
            const other = greek[latin.indexOf(letter.toLowerCase())];
            return letter === letter.toLowerCase() ? other : other.toUpperCase();
          }),
    )
    .join('');
}

/** A made-up language: English in Greek letters, numbers and dates as Greek writes them. */
export function inGreekLetters(): Words {
  const words = [...gathered()].map(([key, { one }]) => [
    key,
    one === undefined ? lettered(key) : { one: lettered(one), other: lettered(key) },
  ]);
  return {
    ...Object.fromEntries(words),
    ...{ '.': ',', en: 'el', 'en-GB': 'el', 'sv-SE': 'el', 'neither day nor month first': 'dmy' },
  };
}

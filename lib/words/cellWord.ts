import { say } from './say.ts';

const month = new Intl.DateTimeFormat(say`en`, { month: 'short', timeZone: 'UTC' });
const monthName = (of: number) => month.format(Date.UTC(2026, of));

/** The quarters as cells hold them, each with its name in the reader's language. */
const quarters = Object.fromEntries(
  ['Jan–Mar', 'Apr–Jun', 'Jul–Sep', 'Oct–Dec'].map((stored, quarter) => [
    stored,
    `${monthName(3 * quarter)}–${monthName(3 * quarter + 2)}`,
  ]),
);

const ends = { front: say`front`, hind: say`hind` };

/** The words that cells of a column hold, each as the reader's language says it. */
const cellWords: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  moment: { before: say`before`, after: say`after`, between: say`between` },
  work: { trim: say`trim`, shoe: say`shoe`, reset: say`reset`, none: say`none` },
  view_quality: { good: say`good`, fair: say`fair`, poor: say`poor` },
  build: { pony: say`pony`, riding: say`riding`, heavy: say`heavy`, gaited: say`gaited` },
  side: { left: say`left`, right: say`right` },
  end: ends,
  compared: {
    'after to before': say`after to before`,
    'before to before': say`before to before`,
    'after to after': say`after to after`,
    'between to between': say`between to between`,
  },
  season: quarters,
  shod: { shod: say`shod`, bare: say`bare` },
  which: { shorter: say`shorter`, longer: say`longer` },
};

/**
 * A word that a cell holds, as the reader's language says it. What is stored, compared and written to files stays as it is.
 * @param column  the name of its column: names of horses and people are nobody's words
 * @returns the word itself where it has no other
 * @example cellWord('moment', 'before') // 'before'; 'vor der Arbeit' on German pages
 */
export function cellWord(column: string, word: string): string {
  const words = Object.hasOwn(cellWords, column) ? cellWords[column] : {};
  return Object.hasOwn(words, word) ? words[word] : word;
}

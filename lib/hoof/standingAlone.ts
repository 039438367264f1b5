import { group } from 'd3-array';

/** How horses stand that are told apart by some columns together. */
export interface Standing {
  readonly columns: readonly string[];
  /** How many horses have a word in all of them. */
  readonly told: number;
  /** The rows of those that no other horse shares all words with. */
  readonly alone: readonly number[];
  /** How many share them with one to three others. */
  readonly few: number;
}

/** Fewer horses than this that can't be told apart are few (Sweeney 2002 leaves the number open; 5 is common practice). */
const FEW = 5;

/**
 * Which horses can be told from all others by what people may know of them: by each column, by each two, and by all
 * together. A horse that lacks a word in one of them is left out there.
 * @param columns  of one word a horse each, `''` where it has none
 * @source Sweeney 2002, International Journal of Uncertainty, Fuzziness and Knowledge-Based Systems 10:557–570
 * @example standingAlone({ build: ['pony', 'pony', 'heavy'] })[0].alone // [2]
 */
export function standingAlone(columns: Readonly<Record<string, readonly string[]>>): Standing[] {
  const names = Object.keys(columns);
  const pairs = names.flatMap((one, i) => names.slice(i + 1).map((other) => [one, other]));
  const sets = [...names.map((name) => [name]), ...pairs, ...(names.length > 2 ? [names] : [])];
  return sets.map((set) => {
    const words = (row: number) => set.map((name) => columns[name][row]);
    const told = [...(columns[set[0]] ?? []).keys()].filter((row) => !words(row).includes(''));
    const groups = [...group(told, (row) => JSON.stringify(words(row))).values()];
    return {
      columns: set,
      told: told.length,
      alone: groups.flatMap((rows) => (rows.length === 1 ? rows : [])),
      few: groups.reduce((sum, { length }) => sum + (length > 1 && length < FEW ? length : 0), 0),
    };
  });
}

import { functions } from '../../sheet/formula/functions.ts';
import type { Table } from '../../sheet/table.ts';

/** Something that can be written at a place in a formula. */
export interface Completion {
  /** As it is listed: `toe_angle_deg`, `mean(x, …keys)`. */
  readonly name: string;
  /** What it is, in words. */
  readonly about: string;
  /** What is written in place of the word that was begun. */
  readonly text: string;
}

const WORD = /[\p{L}_$][\p{L}\p{N}_$]*$/u;
const MOST = 8;

/** The word that is being written at a place in a formula: where it starts, and what stands there so far. */
export function wordAt(formula: string, caret: number): { readonly start: number; readonly word: string } {
  const word = WORD.exec(formula.slice(0, caret))?.[0] ?? '';
  return { start: caret - word.length, word };
}

/**
 * What a begun word may become: columns by name or title, relations and functions by name. Names that begin so come first.
 * @param titleOf what people call a column
 * @returns at most eight; none for no word, or where the word is complete and nothing else begins with it
 * @example completions('toe_l', table, titleOf)[0].text // 'toe_length_mm'
 */
export function completions(word: string, table: Table, titleOf: (column: string) => string): readonly Completion[] {
  if (word === '') return [];
  const wanted = word.toLowerCase();
  const all: Completion[] = [
    ...table.names.map((name) => ({ name, about: titleOf(name), text: written(name) })),
    ...table.relations.map(({ name, words }) => ({ name: `${name}(x)`, about: `${words} x`, text: `${name}(` })),
    ...[...functions.values()].map(({ name, parameters, about }) => ({
      name: `${name}(${parameters.join(', ')})`,
      about,
      text: `${name}(`,
    })),
  ];
  const rank = ({ name, about }: Completion) => {
    if (name.toLowerCase().startsWith(wanted)) return 0;
    if (name.toLowerCase().includes(wanted)) return 1;
    return about.toLowerCase().includes(wanted) ? 2 : 3;
  };
  const found = all
    .map((completion) => ({ completion, at: rank(completion) }))
    .filter(({ at }) => at < 3)
    .sort((a, b) => a.at - b.at)
    .map(({ completion }) => completion);
  return found.length === 1 && found[0].text === word ? [] : found.slice(0, MOST);
}

/** A column as a formula names it. */
function written(name: string): string {
  return /^[\p{L}_$][\p{L}\p{N}_$]*$/u.test(name) ? name : `column(${JSON.stringify(name)})`;
}

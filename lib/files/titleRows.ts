import { counted } from '../words/counted.ts';
import { say } from '../words/say.ts';
import type { Problem } from './problem.ts';

const longest = 80;

/** The problems without the rows above the headings: a title is nothing that anyone has to mend. */
export function withoutTitles(problems: readonly Problem[]): Problem[] {
  return problems.filter(({ code }) => code !== 'title-row');
}

/**
 * What stood above the headings, one sentence a file; the texts stay among its problems, so that none is lost.
 * @example titleSentences(readTable('Yard list\nhorse,date,limb\n…', { file: 'a.csv' }).problems)
 *   // ['1 row above the headings of a.csv was left out: “Yard list”.']
 */
export function titleSentences(problems: readonly Problem[]): string[] {
  const titles = problems.filter(({ code }) => code === 'title-row');
  return [...new Set(titles.map(({ file }) => file))].map((file) => {
    const texts = titles.filter((title) => title.file === file).map(({ value }) => say`“${brief(value)}”`);
    const said = texts.join(', ');
    const count = texts.length;
    return counted(count, {
      one: say`${count} row above the headings of ${file} was left out: ${said}.`,
      other: say`${count} rows above the headings of ${file} were left out: ${said}.`,
    });
  });
}

const brief = (text: string) => (text.length > longest ? `${text.slice(0, longest)}…` : text);

import { say } from '../../words/say.ts';
import type { Token } from './tokens.ts';
import { isKept } from './words.ts';

const quotes = say`text stands in '…' or "…", closed by the quote that opens it`;
const list = say`a formula gives one value a row, not a list`;
const named = say`only the functions of the list can be called, by their bare names, as in sqrt(x)`;
const twoSigns = say`write x + 1, or put a blank between two signs`;
const yesNo = say`a yes/no column stands for itself, as in shod or !shod`;
const comments = say`a formula has no comments, and a division takes one /`;
const write = (instead: string) => say`write ${instead}`;

/** What people write out of habit, and what to write here. */
const habits: Readonly<Record<string, string>> = {
  '.': say`a column stands for itself, and a name with a dot is written column("the.name")`,
  ',': say`decimals take a point, as in 1.5, and only what a function is given is parted by commas`,
  '=': say`two values are compared by ==, and a column is named beside its formula`,
  '++': twoSigns,
  '--': twoSigns,
  '//': comments,
  '/*': comments,
  '=>': named,
  function: named,
  new: named,
  '[': list,
  '{': list,
  '"': quotes,
  "'": quotes,
  '`': quotes,
  '“': quotes,
  '”': quotes,
  '„': quotes,
  '‘': quotes,
  '’': quotes,
  true: yesNo,
  false: yesNo,
  null: write('missing()'),
  '??': write('coalesce(x, y)'),
  '&': write('&&'),
  '|': write('||'),
  and: write('&&'),
  or: write('||'),
  '<>': write('!='),
  '≠': write('!='),
  '≤': write('<='),
  '≥': write('>='),
  '^': write('**'),
  '×': write('*'),
  '·': write('*'),
  '÷': write('/'),
  '−': write('-'),
};

/** The way out where a piece of a formula can't stand; `undefined` where there is nothing particular to say. */
export function wayOut({ kind, text }: Token): string | undefined {
  if (kind !== 'sign' && kind !== 'word') return undefined;
  if (Object.hasOwn(habits, text)) return habits[text];
  if (isKept(text))
    return say`this word is kept for other uses, and a column of that name is written column("${text}")`;
  if (/^\d/.test(text))
    return say`numbers are written as in 10, 0.5 or 1.5e3, and a column whose name starts with a digit is written column("${text}")`;
  return undefined;
}

import type { Place } from './syntax.ts';
import { wordPattern } from './words.ts';

/** A piece of a formula's text, as it is written. */
export interface Token extends Place {
  readonly kind: 'number' | 'text' | 'word' | 'sign' | 'end';
  readonly text: string;
}

const number = String.raw`(?:(?:0|[1-9]\d*)(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?(?![\p{ID_Continue}$.])`;
const text = String.raw`"(?:[^"\\\n\r]|\\.)*"|'(?:[^'\\\n\r]|\\.)*'`;
const sign = String.raw`[=!]==?|[<>]=|\*\*|&&|\|\||\?\?|\+\+|--|=>|<<|>>|<>|\/[/*]|\d[\p{ID_Continue}$.]*|.`;
const piece = new RegExp(
  `\\s*(?:(?<number>${number})|(?<text>${text})|(?<word>${wordPattern})|(?<sign>${sign})|(?<end>$))`,
  'gsuy',
);

/**
 * The pieces of a formula's text, the last one of kind `end`. Whatever is no number, word or text in quotes is a sign,
 * whether or not a formula can hold it.
 * @example tokens('a / 10').map(({ text }) => text) // ['a', '/', '10', '']
 */
export function tokens(formula: string): readonly Token[] {
  return Array.from(formula.matchAll(piece), ({ index, 0: all, groups }) => {
    const [kind, text] = Object.entries(groups as Record<Token['kind'], string | undefined>).find(
      (group): group is [Token['kind'], string] => group[1] !== undefined,
    ) as [Token['kind'], string];
    const end = index + all.length;
    return { kind, text, start: end - text.length, end };
  });
}

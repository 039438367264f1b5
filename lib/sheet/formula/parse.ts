import { say } from '../../words/say.ts';
import { conditional } from './nodes.ts';
import type { BinaryOperator } from './operators.ts';
import { strength } from './strength.ts';
import { FormulaError, type Node, type Place } from './syntax.ts';
import { type Token, tokens } from './tokens.ts';
import { wayOut } from './wayOut.ts';
import { isKept } from './words.ts';

const longest = 4000;
const deepest = 200;

/**
 * The syntax tree of a formula: a small subset of ECMAScript expressions over column names.
 * Numbers, text in quotes, columns (`column("any name")` where the name is not one word), `+ - * / % **`, comparisons,
 * `&& || !`, `test ? a : b` and calls of named functions; nothing else.
 * @param text  up to 4,000 characters, nested up to 200 deep
 * @throws FormulaError with the place
 * @example parse('frog_width_mm / frog_length_mm').kind // 'binary'
 */
export function parse(text: string): Node {
  if (text.length > longest)
    throw new FormulaError(
      say`A formula has at most ${longest} characters and this one has ${text.length}. Split it into columns`,
      longest,
      text.length,
    );
  if (text.trim() === '')
    throw new FormulaError(say`The formula is empty. Write column names and numbers, as in toe_length_mm / 10`, 0, 0);
  return new Parser(tokens(text)).whole();
}

/** Reads by precedence: an operator takes for its right side whatever binds tighter than itself. */
class Parser {
  #taken = 0;
  /** Levels of what was read last, brackets included. */
  #levels = 0;

  constructor(readonly tokens: readonly Token[]) {}

  whole(): Node {
    const node = this.#anything(1);
    if (this.#next.kind !== 'end') throw unexpected(this.#next);
    return node;
  }

  /** A choice, or whatever binds tighter, `depth` levels down. */
  #anything(depth: number): Node {
    const { start } = this.#next;
    const test = this.#chain(0, depth);
    let levels = this.#levels;
    if (!this.#takes('?')) return test;
    const then = this.#anything(depth + 1);
    levels = Math.max(levels, this.#levels);
    this.#expect(':');
    const otherwise = this.#anything(depth + 1);
    return conditional(test, then, otherwise, this.#above(Math.max(levels, this.#levels), depth, start));
  }

  /** Values between operators that bind at least as tightly as `least`. */
  #chain(least: number, depth: number): Node {
    const first = this.#next;
    let left = this.#value(depth);
    for (;;) {
      const operator = operatorOf(this.#next);
      if (operator === undefined || strength[operator] < least) return left;
      const power = operator === '**';
      if (power && isSign(first)) throw signBeforePower(this.#next);
      this.#taken++;
      const levels = this.#levels;
      const right = this.#chain(strength[operator] + (power ? 0 : 1), depth + 1);
      const place = this.#above(Math.max(levels, this.#levels), depth, first.start);
      left = { kind: 'binary', operator, left, right, ...place };
    }
  }

  #value(depth: number): Node {
    const token = this.#next;
    const { kind, text, start, end } = token;
    if (depth > deepest) throw tooDeep(token);
    this.#levels = 1;
    if (isSign(token)) {
      this.#taken++;
      const operand = this.#value(depth + 1);
      const place = this.#above(this.#levels, depth, start);
      return text === '+' ? operand : { kind: 'unary', operator: text as '-' | '!', operand, ...place };
    }
    if (this.#takes('(')) {
      const node = this.#anything(depth + 1);
      this.#expect(')');
      this.#above(this.#levels, depth, start);
      return node;
    }
    if (kind === 'sign' || kind === 'end' || (kind === 'word' && isKept(text))) throw unexpected(token);
    this.#taken++;
    if (kind === 'number') return { kind, value: numberOf(token), start, end };
    if (kind === 'text') return { kind, value: textOf(token), start, end };
    return this.#takes('(') ? this.#call(text, depth, start) : { kind: 'column', name: text, start, end };
  }

  /** A call, from behind its opening bracket on. */
  #call(name: string, depth: number, start: number): Node {
    const args: Node[] = [];
    let levels = 0;
    while (!this.#takes(')')) {
      if (args.length > 0) this.#expect(',');
      args.push(this.#anything(depth + 1));
      levels = Math.max(levels, this.#levels);
    }
    const place = this.#above(levels, depth, start);
    if (name !== 'column') return { kind: 'call', name, args, ...place };
    if (args.length === 1 && args[0].kind === 'text') return { kind: 'column', name: args[0].value, ...place };
    throw new FormulaError(say`column() takes one name in quotes, as in column("toe length")`, place.start, place.end);
  }

  get #next(): Token {
    return this.tokens[this.#taken];
  }

  #takes(sign: string): boolean {
    const found = this.#next.kind === 'sign' && this.#next.text === sign;
    if (found) this.#taken++;
    return found;
  }

  #expect(sign: string): void {
    if (!this.#takes(sign)) throw unexpected(this.#next);
  }

  /** The place from `start` to what was taken last, of an expression one level above `levels`. */
  #above(levels: number, depth: number, start: number): Place {
    const place = { start, end: this.tokens[this.#taken - 1].end };
    this.#levels = levels + 1;
    if (depth + levels > deepest) throw tooDeep(place);
    return place;
  }
}

function isSign({ kind, text }: Token): boolean {
  return kind === 'sign' && (text === '-' || text === '!' || text === '+');
}

function operatorOf({ kind, text }: Token): BinaryOperator | undefined {
  const operator = text === '===' ? '==' : text === '!==' ? '!=' : text;
  return kind === 'sign' && Object.hasOwn(strength, operator) ? (operator as BinaryOperator) : undefined;
}

function numberOf({ text, start, end }: Token): number {
  const value = Number(text);
  if (Number.isFinite(value)) return value;
  throw new FormulaError(say`${quoted(text)} is larger than any number that can be computed with`, start, end);
}

const escapes: Readonly<Record<string, string>> = { b: '\b', f: '\f', n: '\n', r: '\r', t: '\t' };

function textOf({ text, start, end }: Token): string {
  return text.slice(1, -1).replace(/\\(?:u([\da-fA-F]{4})|(.))/gs, (all, code?: string, sign?: string) => {
    if (code !== undefined) return String.fromCharCode(Number.parseInt(code, 16));
    if (sign !== undefined && !/[\w\s]/.test(sign)) return sign;
    if (sign !== undefined && Object.hasOwn(escapes, sign)) return escapes[sign];
    throw refused(quoted(all), say`in a text \\ stands before a quote or another \\`, start, end);
  });
}

function unexpected(token: Token): FormulaError {
  const { kind, text, start, end } = token;
  const remedy = wayOut(token);
  if (remedy !== undefined) return refused(quoted(text), remedy, start, end);
  const what = kind === 'end' ? say`it ends too early` : say`${quoted(text)} can't stand here`;
  return new FormulaError(
    say`The formula can't be read at character ${start}: ${what}. Expected a number, a column, a function, a bracket or an operator between two of them`,
    start,
    end,
  );
}

function signBeforePower({ text, start, end }: Token): FormulaError {
  return refused(quoted(text), say`after a sign it is unclear what to raise; write (-x) ** 2 or -(x ** 2)`, start, end);
}

function refused(what: string, remedy: string, start: number, end: number): FormulaError {
  return new FormulaError(say`A formula can't hold ${what} (characters ${start} to ${end}): ${remedy}`, start, end);
}

function tooDeep({ start, end }: Place): FormulaError {
  return new FormulaError(
    say`The formula is nested or chained more than ${deepest} deep. Split it into columns`,
    start,
    end,
  );
}

function quoted(text: string): string {
  return `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;
}

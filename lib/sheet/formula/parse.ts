import type {
  CallExpression,
  Comment,
  Expression,
  Literal,
  Options,
  PrivateIdentifier,
  SpreadElement,
  Super,
} from 'acorn';
import { parseExpressionAt } from 'acorn';
import { say } from '../../words/say.ts';
import { conditional } from './nodes.ts';
import { operators } from './operators.ts';
import { FormulaError, type Node } from './syntax.ts';

const longest = 4000;
const deepest = 200;

type Written = Expression | SpreadElement | Super | PrivateIdentifier;

/** What people write out of habit, and what to write here. */
const wayOut: Readonly<Record<string, string>> = {
  MemberExpression: say`a column stands for itself, and a name with a dot is written column("the.name")`,
  AssignmentExpression: say`two values are compared by ==, and a column is named beside its formula`,
  UpdateExpression: say`write x + 1`,
  TemplateLiteral: say`text stands in '…' or "…"`,
  SequenceExpression: say`decimals take a point, as in 1.5, and only what a function is given is parted by commas`,
  ArrayExpression: say`a formula gives one value a row, not a list`,
  ArrowFunctionExpression: say`only the functions of the list can be called`,
  FunctionExpression: say`only the functions of the list can be called`,
};

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
  return nodeOf(read(text), 1);
}

function read(text: string): Expression {
  const comments: Comment[] = [];
  const options: Options = { ecmaVersion: 2023, sourceType: 'module', preserveParens: true, onComment: comments };
  let tree: Expression;
  try {
    tree = parseExpressionAt(text, 0, options);
  } catch (error) {
    if (error instanceof RangeError) throw tooDeep(0, text.length);
    if (!(error instanceof SyntaxError)) throw error;
    const { pos } = error as SyntaxError & { pos: number };
    throw text.slice(0, pos).split('(').length > deepest ? tooDeep(0, pos) : unreadable(text, pos);
  }
  // A comment would swallow the rest of `a // b`.
  if (comments.length > 0)
    throw new FormulaError(
      say`A formula has no comments, and ${text.slice(comments[0].start, comments[0].start + 2)} starts one. For a division write one /`,
      comments[0].start,
      comments[0].end,
    );
  const rest = text.slice(tree.end).search(/\S/);
  if (rest >= 0) throw unreadable(text, tree.end + rest);
  return tree;
}

function unreadable(text: string, position: number): FormulaError {
  const found = text.slice(position).match(/^(\w+|\S)/)?.[0];
  const what = found === undefined ? say`it ends too early` : say`${quoted(found)} can't stand here`;
  return new FormulaError(
    say`The formula can't be read at character ${position}: ${what}. Expected a number, a column, a function, a bracket or an operator between two of them`,
    Math.min(position, text.length),
    Math.min(position + (found?.length ?? 0), text.length),
  );
}

function tooDeep(start: number, end: number): FormulaError {
  return new FormulaError(
    say`The formula is nested or chained more than ${deepest} deep. Split it into columns`,
    start,
    end,
  );
}

function quoted(text: string): string {
  return `“${text.length > 40 ? `${text.slice(0, 39)}…` : text}”`;
}

function nodeOf(tree: Written, depth: number): Node {
  const { start, end } = tree;
  if (depth > deepest) throw tooDeep(start, end);
  const inner = (child: Written) => nodeOf(child, depth + 1);
  switch (tree.type) {
    case 'Literal':
      return literal(tree);
    case 'Identifier':
      return { kind: 'column', name: tree.name, start, end };
    case 'ParenthesizedExpression':
      return inner(tree.expression);
    case 'UnaryExpression':
      if (tree.operator === '+') return inner(tree.argument);
      if (tree.operator === '-' || tree.operator === '!')
        return { kind: 'unary', operator: tree.operator, operand: inner(tree.argument), start, end };
      throw refused(quoted(tree.operator), start, end);
    case 'BinaryExpression':
    case 'LogicalExpression': {
      const operator = tree.operator === '===' ? '==' : tree.operator === '!==' ? '!=' : tree.operator;
      if (!Object.hasOwn(operators, operator))
        throw refused(quoted(operator), start, end, operator === '??' ? say`write coalesce(x, y)` : undefined);
      return {
        kind: 'binary',
        operator: operator as keyof typeof operators,
        left: inner(tree.left),
        right: inner(tree.right),
        start,
        end,
      };
    }
    case 'ConditionalExpression':
      return conditional(inner(tree.test), inner(tree.consequent), inner(tree.alternate), tree);
    case 'CallExpression':
      return call(tree, inner);
    default:
      throw refused(a(tree.type), start, end, Object.hasOwn(wayOut, tree.type) ? wayOut[tree.type] : undefined);
  }
}

function literal(tree: Literal): Node {
  const { start, end, value } = tree;
  if (typeof value === 'string') return { kind: 'text', value, start, end };
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return { kind: 'number', value, start, end };
    throw new FormulaError(
      say`${quoted(tree.raw ?? '')} is larger than any number that can be computed with`,
      start,
      end,
    );
  }
  if (typeof value === 'boolean')
    throw refused(String(value), start, end, say`a yes/no column stands for itself, as in shod or !shod`);
  throw refused(quoted(tree.raw ?? ''), start, end, value === null ? say`write missing()` : undefined);
}

function call(tree: CallExpression, inner: (child: Written) => Node): Node {
  const { start, end, callee } = tree;
  if (callee.type !== 'Identifier' || tree.optional)
    throw refused(
      say`a call of something that is not a name`,
      callee.start,
      callee.end,
      say`functions are called by their bare names, as in sqrt(x)`,
    );
  if (callee.name === 'column') {
    const name = tree.arguments[0];
    if (tree.arguments.length !== 1 || name.type !== 'Literal' || typeof name.value !== 'string')
      throw new FormulaError(say`column() takes one name in quotes, as in column("toe length")`, start, end);
    return { kind: 'column', name: name.value, start, end };
  }
  return { kind: 'call', name: callee.name, args: tree.arguments.map(inner), start, end };
}

/** `MemberExpression` → `a member expression`. */
function a(type: string): string {
  const words = type.replace(/(?<=[a-z])[A-Z]/g, ' $&').toLowerCase();
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}

function refused(
  what: string,
  start: number,
  end: number,
  remedy = say`see the list of what a formula can hold`,
): FormulaError {
  return new FormulaError(say`A formula can't hold ${what} (characters ${start} to ${end}): ${remedy}`, start, end);
}

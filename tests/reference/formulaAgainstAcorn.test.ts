// The grammar is ECMAScript's (ECMA-262), as the parser acorn reads it: a general-purpose reference.
import { type Expression, parseExpressionAt } from 'acorn';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from '../../lib/sheet/formula/parse.ts';
import { FormulaError, type Node } from '../../lib/sheet/formula/syntax.ts';

/** The tree that acorn gives, in our words; `undefined` for what the subset leaves out. */
function reference(text: string): Node | undefined {
  let tree: Expression;
  try {
    tree = parseExpressionAt(text, 0, { ecmaVersion: 2023, sourceType: 'module', preserveParens: true });
  } catch {
    return undefined;
  }
  if (/\S/.test(text.slice(tree.end))) return undefined;
  try {
    return nodeOf(tree);
  } catch (error) {
    if (error instanceof Outside) return undefined;
    throw error;
  }
}

class Outside extends Error {}

function nodeOf(tree: Expression): Node {
  const { start, end } = tree;
  switch (tree.type) {
    case 'Literal':
      if (typeof tree.value === 'number' && Number.isFinite(tree.value))
        return { kind: 'number', value: tree.value, start, end };
      if (typeof tree.value === 'string') return { kind: 'text', value: tree.value, start, end };
      throw new Outside();
    case 'Identifier':
      return { kind: 'column', name: tree.name, start, end };
    case 'ParenthesizedExpression':
      return nodeOf(tree.expression);
    case 'UnaryExpression':
      if (tree.operator === '+') return nodeOf(tree.argument);
      if (tree.operator !== '-' && tree.operator !== '!') throw new Outside();
      return { kind: 'unary', operator: tree.operator, operand: nodeOf(tree.argument), start, end };
    case 'BinaryExpression':
    case 'LogicalExpression': {
      const operator = tree.operator.replace(/^([=!]=)=$/, '$1');
      if (!/^([-+*/%<>]|\*\*|[=!<>]=|&&|\|\|)$/.test(operator) || tree.left.type === 'PrivateIdentifier')
        throw new Outside();
      return {
        kind: 'binary',
        operator: operator as '+',
        left: nodeOf(tree.left),
        right: nodeOf(tree.right),
        start,
        end,
      };
    }
    case 'ConditionalExpression': {
      const [test, then, otherwise] = [tree.test, tree.consequent, tree.alternate].map(nodeOf);
      return Object.assign({ kind: 'conditional' as const, test, otherwise, start, end }, { then });
    }
    case 'CallExpression': {
      if (tree.callee.type !== 'Identifier' || tree.optional) throw new Outside();
      const args = tree.arguments.map((arg) => nodeOf(arg as Expression));
      const name = tree.callee.name;
      if (name !== 'column') return { kind: 'call', name, args, start, end };
      if (args.length !== 1 || args[0].kind !== 'text') throw new Outside();
      return { kind: 'column', name: args[0].value, start, end };
    }
    default:
      throw new Outside();
  }
}

function ours(text: string): Node | undefined {
  try {
    return parse(text);
  } catch (error) {
    if (error instanceof FormulaError) return undefined;
    throw error;
  }
}

const values = [
  'a',
  'toe_length_mm',
  'länge',
  '$x',
  'column("a b")',
  '1',
  '0',
  '.5',
  '5.',
  '1.5e-3',
  '2E+4',
  "'LF'",
  '"a\\"\\u00e4\\n"',
  'f()',
  'mean(a, b)',
];
const signs = ['+', '-', '*', '/', '%', '**', '<', '<=', '>', '>=', '==', '===', '!=', '!==', '&&', '||', '?', ':'];
const blank = fc.constantFrom('', ' ', '\t', '\n', '\u00a0', '\u2028');

test('a formula made of what a formula can hold gives the tree that ECMAScript gives it, with the same places', () => {
  const { formula } = fc.letrec<{ formula: string }>((tie) => {
    const spaced = (...parts: readonly fc.Arbitrary<string>[]) =>
      fc.tuple(...parts.flatMap((part) => [blank, part])).map((all) => all.join(''));
    const formula = tie('formula');
    return {
      formula: fc.oneof(
        { depthSize: 'medium', withCrossShrink: true },
        fc.constantFrom(...values),
        spaced(formula, fc.constantFrom(...signs.slice(0, -2)), formula),
        spaced(fc.constantFrom('-', '!', '+'), formula),
        spaced(fc.constant('('), formula, fc.constant(')')),
        spaced(formula, fc.constant('?'), formula, fc.constant(':'), formula),
        spaced(
          fc.constantFrom('f', 'mean', 'column'),
          fc.constant('('),
          formula,
          fc.constant(','),
          formula,
          fc.constant(')'),
        ),
      ),
    };
  });
  let read = 0;
  fc.assert(
    fc.property(formula, (text) => {
      fc.pre(text.length < 2000);
      const tree = reference(text);
      if (tree !== undefined) read++;
      expect(ours(text)).toEqual(tree);
    }),
    { numRuns: 3000 },
  );
  expect(read).toBeGreaterThan(1000);
});

test('whatever is taken is taken as ECMAScript takes it, and nothing that it can’t read is taken', () => {
  const others = [
    '(',
    ')',
    ',',
    '.',
    '++',
    '--',
    '=',
    '=>',
    '??',
    '?.',
    '//',
    '/*',
    '*/',
    '`',
    '[',
    ']',
    '{',
    '}',
    '&',
    '<<',
    '01',
    '1_0',
    '0x1',
    '2nd',
    'this',
    'null',
    'new ',
    '"',
    "'",
    '\\',
    '#',
    ';',
  ];
  const text = fc
    .array(fc.constantFrom(...values, ...signs, ...signs, ' ', ...others), { maxLength: 6 })
    .map((parts) => parts.join(''));
  let taken = 0;
  fc.assert(
    fc.property(text, (text) => {
      const tree = ours(text);
      if (tree === undefined) return;
      taken++;
      expect(reference(text)).toEqual(tree);
    }),
    { numRuns: 20_000 },
  );
  expect(taken).toBeGreaterThan(500);
});

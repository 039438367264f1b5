import type { Node } from './syntax.ts';

/** How tightly an operator binds, from loose to tight. */
const strength: Readonly<Record<string, number>> = {
  '||': 2,
  '&&': 3,
  '==': 4,
  '!=': 4,
  '<': 5,
  '<=': 5,
  '>': 5,
  '>=': 5,
  '+': 6,
  '-': 6,
  '*': 7,
  '/': 7,
  '%': 7,
  '**': 9,
};
const conditionalStrength = 1;
const unaryStrength = 8;

/**
 * The text of a formula from its tree, with the brackets it needs and no more: read again it gives the same tree.
 * @example print(parse('((a))+(b*c)')) // 'a + b * c'
 */
export function print(node: Node): string {
  return printed(node, 0);
}

function printed(node: Node, around: number): string {
  const bracketed = (text: string, own: number) => (own < around ? `(${text})` : text);
  switch (node.kind) {
    case 'number':
      return Number.isNaN(node.value)
        ? 'missing()'
        : bracketed(String(node.value), node.value < 0 ? unaryStrength : 10);
    case 'text':
      return JSON.stringify(node.value);
    case 'column':
      return isWord(node.name) ? node.name : `column(${JSON.stringify(node.name)})`;
    case 'unary':
      // Two signs side by side would be read as one that counts down, and a sign before a power can't be read.
      return bracketed(`${node.operator}${printed(node.operand, strength['**'] + 1)}`, unaryStrength);
    case 'binary': {
      const own = strength[node.operator];
      const power = node.operator === '**';
      const left = printed(node.left, power ? own + 1 : own);
      const right = printed(node.right, power ? unaryStrength : own + 1);
      return bracketed(`${left} ${node.operator} ${right}`, own);
    }
    case 'conditional': {
      const [test, then, otherwise] = [node.test, node.then, node.otherwise];
      const text = `${printed(test, conditionalStrength + 1)} ? ${printed(then, 0)} : ${printed(otherwise, 0)}`;
      return bracketed(text, conditionalStrength);
    }
    case 'call':
      return `${node.name}(${node.args.map((arg) => printed(arg, 0)).join(', ')})`;
  }
}

const reserved = new Set(
  'await break case catch class const continue debugger default delete do else enum export extends false finally for function if implements import in instanceof interface let new null package private protected public return static super switch this throw true try typeof var void while with yield'.split(
    ' ',
  ),
);

function isWord(name: string): boolean {
  return /^[\p{ID_Start}_$][\p{ID_Continue}$]*$/u.test(name) && !reserved.has(name);
}

/** A node's text for an error, cut where it is long. */
export function excerpt(node: Node): string {
  return shortened(print(node));
}

export function shortened(text: string): string {
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

import { conditionalStrength, signStrength, strength } from './strength.ts';
import type { Node } from './syntax.ts';
import { isWord } from './words.ts';

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
      return Number.isNaN(node.value) ? 'missing()' : bracketed(String(node.value), node.value < 0 ? signStrength : 10);
    case 'text':
      return JSON.stringify(node.value);
    case 'column':
      return isWord(node.name) ? node.name : `column(${JSON.stringify(node.name)})`;
    case 'unary':
      // Two signs side by side would be read as one that counts down, and a sign before a power can't be read.
      return bracketed(`${node.operator}${printed(node.operand, strength['**'] + 1)}`, signStrength);
    case 'binary': {
      const own = strength[node.operator];
      const power = node.operator === '**';
      const left = printed(node.left, power ? own + 1 : own);
      const right = printed(node.right, power ? signStrength : own + 1);
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

/** A node's text for an error, cut where it is long. */
export function excerpt(node: Node): string {
  return shortened(print(node));
}

export function shortened(text: string): string {
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}

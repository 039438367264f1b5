import { tidy } from '../dimension.ts';
import type { Node, Place } from './syntax.ts';

/** A number that stands where `place` does. */
export function number(value: number, { start, end }: Place): Node {
  return { kind: 'number', value, start, end };
}

/** `node` times a factor; the node itself where the factor is 1, and numbers are multiplied at once. */
export function times(node: Node, factor: number): Node {
  if (factor === 1) return node;
  if (node.kind === 'number') return number(tidy(node.value * factor), node);
  if (node.kind === 'binary' && node.operator === '*' && node.right.kind === 'number')
    return times(node.left, tidy(node.right.value * factor));
  const { start, end } = node;
  return { kind: 'binary', operator: '*', left: node, right: number(factor, node), start, end };
}

/** `test ? then : otherwise`. */
export function conditional(test: Node, then: Node, otherwise: Node, { start, end }: Place): Node {
  return { kind: 'conditional', test, then, otherwise, start, end };
}

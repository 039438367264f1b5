import { functions } from './functions.ts';
import { conditional } from './nodes.ts';
import type { Node } from './syntax.ts';

/** The parts of a node that are computed row by row before it; the keys of a summary are names, not parts. */
export function children(node: Node): readonly Node[] {
  switch (node.kind) {
    case 'number':
    case 'text':
    case 'column':
      return [];
    case 'unary':
      return [node.operand];
    case 'binary':
      return [node.left, node.right];
    case 'conditional':
      return [node.test, node.then, node.otherwise];
    case 'call': {
      const row = functions.get(node.name);
      return row?.sort === 'summary' ? node.args.slice(0, row.parameters.length) : node.args;
    }
  }
}

/** The names of the columns that a summary's groups go by. */
export function keysOf(node: Node & { kind: 'call' }): readonly string[] {
  const row = functions.get(node.name);
  if (row?.sort !== 'summary') return [];
  return node.args.slice(row.parameters.length).map((key) => (key as Node & { kind: 'column' }).name);
}

/** The same node with other parts, in the order in which `children` gives them. */
export function withChildren(node: Node, parts: readonly Node[]): Node {
  switch (node.kind) {
    case 'number':
    case 'text':
    case 'column':
      return node;
    case 'unary':
      return { ...node, operand: parts[0] };
    case 'binary':
      return { ...node, left: parts[0], right: parts[1] };
    case 'conditional':
      return conditional(parts[0], parts[1], parts[2], node);
    case 'call':
      return { ...node, args: [...parts, ...node.args.slice(parts.length)] };
  }
}

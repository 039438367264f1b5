import { children, keysOf } from './children.ts';
import type { Node } from './syntax.ts';

/** Gives equal expressions the same number, wherever they stand. Each node object is looked at once. */
export class Numbering {
  readonly #numbers = new Map<string, number>();
  readonly #known = new WeakMap<Node, number>();

  of(node: Node): number {
    const known = this.#known.get(node);
    if (known !== undefined) return known;
    const key = JSON.stringify([describe(node), ...children(node).map((child) => this.of(child))]);
    const number = this.#numbers.get(key) ?? this.#numbers.size;
    this.#numbers.set(key, number);
    this.#known.set(node, number);
    return number;
  }
}

/** All of a node but its parts. */
function describe(node: Node): readonly string[] {
  switch (node.kind) {
    case 'number':
      return ['number', Object.is(node.value, -0) ? '-0' : String(node.value)];
    case 'text':
      return ['text', node.value];
    case 'column':
      return ['column', node.name];
    case 'unary':
    case 'binary':
      return [node.kind, node.operator];
    case 'conditional':
      return ['conditional'];
    case 'call':
      return ['call', node.name, ...keysOf(node)];
  }
}

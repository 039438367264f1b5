import { kept } from '../kept.ts';
import { children, withChildren } from './children.ts';
import type { Node } from './syntax.ts';

/**
 * A formula over measured columns only: every column that is computed is replaced by its own formula, all the way down.
 * The key columns of summaries stay, because groups go by the column's name.
 * @param node as `resolve` gives it
 * @param formulaOf the resolved formula of a computed column, `undefined` for a measured one; columns must not form a loop
 * @returns a tree in which every use of a computed column is the same object, so that it never grows beyond the formulas
 * @example inline(parse('a * 2'), (name) => (name === 'a' ? parse('x - y') : undefined)) // the tree of (x - y) * 2
 */
export function inline(node: Node, formulaOf: (name: string) => Node | undefined): Node {
  const known = new Map<string, Node>();

  function whole(part: Node): Node {
    if (part.kind === 'column') return column(part);
    const parts = children(part);
    const replaced = parts.map(whole);
    return replaced.every((child, i) => child === parts[i]) ? part : withChildren(part, replaced);
  }

  function column(part: Node & { kind: 'column' }): Node {
    return kept(known, part.name, () => {
      const formula = formulaOf(part.name);
      return formula === undefined ? part : whole(formula);
    });
  }

  return whole(node);
}

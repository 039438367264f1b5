import type { Table } from '../table.ts';
import { functions, type PlainFunction } from './functions.ts';
import { type Operation, operators, signs } from './operators.ts';
import type { Summary } from './summaries.ts';
import type { Node } from './syntax.ts';

type Call = Node & { kind: 'call' };
type ColumnNode = Node & { kind: 'column' };

/** How a node's error comes from its parts' errors. */
export type Carrier =
  /** It has none: constants, dates and categories without a stated error, comparisons, tests, counts. */
  | { readonly kind: 'exact' }
  | { readonly kind: 'root'; readonly name: string }
  | { readonly kind: 'operation'; readonly operation: Operation; readonly args: readonly Node[] }
  | { readonly kind: 'choice'; readonly test: Node; readonly branches: readonly [Node, Node] }
  | { readonly kind: 'summary'; readonly call: Call; readonly row: Summary }
  | { readonly kind: 'relation'; readonly call: Call };

const exact: Carrier = { kind: 'exact' };

/** @param node of a resolved tree over measured columns */
export function carrier(node: Node, table: Table): Carrier {
  switch (node.kind) {
    case 'number':
    case 'text':
      return exact;
    case 'column':
      return root(node, table);
    case 'unary':
      return node.operator === '!' ? exact : { kind: 'operation', operation: signs['-'], args: [node.operand] };
    case 'binary':
      return /[<>=!&|]/.test(node.operator)
        ? exact
        : { kind: 'operation', operation: operators[node.operator], args: [node.left, node.right] };
    case 'conditional':
      return { kind: 'choice', test: node.test, branches: [node.then, node.otherwise] };
    case 'call':
      return call(node);
  }
}

function root({ name }: ColumnNode, table: Table): Carrier {
  const column = table.column(name);
  const measured = column.kind === 'number' || (column.kind !== 'text' && column.error !== undefined);
  return measured ? { kind: 'root', name } : exact;
}

function call(node: Call): Carrier {
  const row = functions.get(node.name);
  if (row === undefined) return { kind: 'relation', call: node };
  if (row.sort === 'summary') return row.name === 'count' ? exact : { kind: 'summary', call: node, row };
  const operation = row as PlainFunction;
  return operation.gives === 'boolean' ? exact : { kind: 'operation', operation, args: node.args };
}

/** The names of the measured columns that a formula's error comes from, each once. */
export function roots(node: Node, table: Table): readonly string[] {
  const names = new Set<string>();
  const seen = new Set<Node>();

  function look(part: Node): void {
    if (seen.has(part)) return;
    seen.add(part);
    const by = carrier(part, table);
    switch (by.kind) {
      case 'exact':
        return;
      case 'root':
        names.add(by.name);
        return;
      case 'operation':
        by.args.forEach(look);
        return;
      case 'choice':
        by.branches.forEach(look);
        return;
      case 'summary':
      case 'relation':
        look(by.call.args[0]);
    }
  }

  look(node);
  return [...names];
}

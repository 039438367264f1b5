import { TextColumn } from '../column.ts';
import { Grouped } from '../grouped.ts';
import type { Table } from '../table.ts';
import { functions } from './functions.ts';
import { operators, signs } from './operators.ts';
import type { Node } from './syntax.ts';

/**
 * The values of some formulas over all rows of a table. Missing stays missing, and so does what has no finite answer.
 * @param nodes  as `resolve` gives them
 * @returns a column a node: numbers (yes/no as 1 and 0, dates as days) with `NaN` for missing, or text
 */
export function values(nodes: readonly Node[], table: Table): (Float64Array | TextColumn)[] {
  return nodes.map((node) => valuesOf(node, table));
}

function valuesOf(node: Node, table: Table): Float64Array | TextColumn {
  const numbers = (child: Node) => valuesOf(child, table) as Float64Array;
  switch (node.kind) {
    case 'number':
      return new Float64Array(table.rows).fill(node.value);
    case 'text':
      return TextColumn.from(new Array<string>(table.rows).fill(node.value));
    case 'column': {
      const column = table.column(node.name);
      return column instanceof TextColumn ? column : column.values.slice();
    }
    case 'unary': {
      const { of } = signs[node.operator];
      return numbers(node.operand).map((x) => of(x, x));
    }
    case 'binary': {
      const { of } = operators[node.operator];
      const left = valuesOf(node.left, table);
      const right = valuesOf(node.right, table);
      if (!(left instanceof TextColumn) && !(right instanceof TextColumn))
        return left.map((x, row) => of(x, right[row]));
      const equal = node.operator === '==' ? 1 : 0;
      const [a, b] = [left as TextColumn, right as TextColumn];
      return Float64Array.from({ length: table.rows }, (_, row) =>
        a.codes[row] < 0 || b.codes[row] < 0 ? Number.NaN : a.at(row) === b.at(row) ? equal : 1 - equal,
      );
    }
    case 'conditional': {
      const test = numbers(node.test);
      const then = valuesOf(node.then, table);
      const otherwise = valuesOf(node.otherwise, table);
      if (then instanceof TextColumn && otherwise instanceof TextColumn)
        return TextColumn.from(
          Array.from(test, (t, row) => (Number.isNaN(t) ? '' : t ? then.at(row) : otherwise.at(row))),
        );
      return test.map((t, row) => (Number.isNaN(t) ? t : Number((t ? then : otherwise).at(row))));
    }
    case 'call':
      return called(node, table);
  }
}

function called(node: Node & { kind: 'call' }, table: Table): Float64Array | TextColumn {
  const row = functions.get(node.name);
  const x = valuesOf(node.args[0], table);
  if (row?.sort === 'plain') {
    const y = node.args.length > 1 ? valuesOf(node.args[1], table) : x;
    if (!(x instanceof TextColumn) && !(y instanceof TextColumn)) return x.map((value, i) => row.of(value, y[i]));
    const [a, b] = [x as TextColumn, y as TextColumn];
    if (row.name === 'coalesce') return TextColumn.from(Array.from(a.codes, (code, i) => (code < 0 ? b : a).at(i)));
    return Float64Array.from(a.codes, (code) => (code < 0 ? 1 : 0));
  }
  if (row?.sort === 'summary') {
    const p = node.args[1]?.kind === 'number' ? node.args[1].value : Number.NaN;
    const keys = node.args.slice(row.parameters.length).map((key) => (key as Node & { kind: 'column' }).name);
    const groups = table.groups(keys);
    const counted = x instanceof TextColumn ? Float64Array.from(x.codes, (code) => (code < 0 ? Number.NaN : 1)) : x;
    const result = row.of(new Grouped(counted, groups), p);
    return Float64Array.from(groups.codes, (code) => result[code]);
  }
  const relation = table.relations.find(({ name }) => name === node.name);
  if (!relation) throw new TypeError(`${node.name} is no function or relation here: resolve the formula first`);
  const partners = table.partners(relation);
  if (x instanceof TextColumn)
    return TextColumn.from(Array.from(partners, (partner) => (partner < 0 ? '' : x.at(partner))));
  return Float64Array.from(partners, (partner) => (partner < 0 ? Number.NaN : x[partner]));
}

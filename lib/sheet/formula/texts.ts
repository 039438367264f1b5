import { TextColumn } from '../column.ts';
import { relationNamed } from '../relationNamed.ts';
import type { Table } from '../table.ts';
import type { Node } from './syntax.ts';

/** The values of a node over all rows, as the evaluation that asks already has them or makes them. */
export type Whole = (node: Node) => Float64Array | TextColumn;

/** Whether a resolved node gives text. */
export function isText(node: Node, table: Table): boolean {
  switch (node.kind) {
    case 'text':
      return true;
    case 'column':
      return table.column(node.name) instanceof TextColumn;
    case 'conditional':
      return isText(node.then, table);
    case 'call': {
      const keeps = node.name === 'coalesce' || table.relations.some(({ name }) => name === node.name);
      return keeps && isText(node.args[0], table);
    }
    default:
      return false;
  }
}

/** The text of a node that gives text, row by row. */
export function texts(node: Node, table: Table, whole: Whole): TextColumn {
  const text = (child: Node) => whole(child) as TextColumn;
  switch (node.kind) {
    case 'text':
      return new TextColumn(new Int32Array(table.rows).fill(node.value === '' ? -1 : 0), [node.value]);
    case 'column':
      return table.column(node.name) as TextColumn;
    case 'conditional': {
      const test = whole(node.test) as Float64Array;
      return merged(text(node.then), text(node.otherwise), (row) =>
        test[row] === 1 ? 'first' : test[row] === 0 ? 'second' : 'neither',
      );
    }
    case 'call': {
      const first = text(node.args[0]);
      if (node.name === 'coalesce')
        return merged(first, text(node.args[1]), (row) => (first.codes[row] < 0 ? 'second' : 'first'));
      const partners = table.partners(relationNamed(node.name, table.relations));
      return new TextColumn(
        partners.map((partner) => (partner < 0 ? -1 : first.codes[partner])),
        first.levels,
      );
    }
    default:
      throw new TypeError(`A ${node.kind} node gives no text`);
  }
}

/** Row by row the one or the other, over one dictionary. */
function merged(
  first: TextColumn,
  second: TextColumn,
  from: (row: number) => 'first' | 'second' | 'neither',
): TextColumn {
  const levels = [...first.levels];
  const known = new Map(levels.map((level, code) => [level, code]));
  const codes = Int32Array.from(second.levels, (level) => known.get(level) ?? levels.push(level) - 1);
  const chosen = first.codes.map((code, row) => {
    const which = from(row);
    if (which === 'first') return code;
    return which === 'neither' || second.codes[row] < 0 ? -1 : codes[second.codes[row]];
  });
  return new TextColumn(chosen, levels);
}

/** 1 where two texts are the same, 0 where they differ, missing where one is. */
export function sameText(a: TextColumn, b: TextColumn): Float64Array {
  const known = new Map(a.levels.map((level, code) => [level, code]));
  const codes = b.levels.map((level) => known.get(level) ?? -2);
  return Float64Array.from(a.codes, (code, row) =>
    code < 0 || b.codes[row] < 0 ? Number.NaN : code === codes[b.codes[row]] ? 1 : 0,
  );
}

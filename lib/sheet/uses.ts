import { children } from './formula/children.ts';
import { functions } from './formula/functions.ts';
import type { Node, Place } from './formula/syntax.ts';
import type { Relation } from './relation.ts';

/** The columns that a relation goes by, of those that a table has. */
export function relationColumns(relation: Relation, names: readonly string[]): readonly string[] {
  const { match, optional = [], swap = {}, before } = relation;
  const all = [...match, ...optional, ...Object.keys(swap), ...(before === undefined ? [] : [before])];
  return names.filter((name) => all.includes(name));
}

/**
 * The columns that a formula is made from, each with its first place: those it names, its summaries' keys, and what
 * its relations go by.
 * @param names  the columns of the table
 */
export function columnsUsed(
  node: Node,
  relations: readonly Relation[],
  names: readonly string[],
): ReadonlyMap<string, Place> {
  const used = new Map<string, Place>();
  const note = (name: string, place: Place) => {
    if (!used.has(name)) used.set(name, place);
  };
  const visit = (part: Node) => {
    if (part.kind === 'column') note(part.name, part);
    if (part.kind !== 'call') return children(part).forEach(visit);
    part.args.forEach(visit);
    const relation = functions.has(part.name) ? undefined : relations.find(({ name }) => name === part.name);
    if (relation) for (const name of relationColumns(relation, names)) note(name, part);
  };
  visit(node);
  return used;
}

import type { Relation } from './relation.ts';

/**
 * The relation of that name.
 * @throws TypeError where there is none, as in a formula that was not resolved
 */
export function relationNamed(name: string, relations: readonly Relation[]): Relation {
  const found = relations.find((relation) => relation.name === name);
  if (!found) throw new TypeError(`${name} is no function or relation here: resolve the formula first`);
  return found;
}

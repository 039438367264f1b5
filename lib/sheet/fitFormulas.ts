import { say } from '../words/say.ts';
import type { Kind } from './column.ts';
import type { ComputedDefinition } from './edits.ts';
import { parse } from './formula/parse.ts';
import { type Resolved, resolve } from './formula/resolve.ts';
import { FormulaError, type Node, type Place } from './formula/syntax.ts';
import { dependencyOrder, loopInWords } from './graph.ts';
import type { Relation } from './relation.ts';
import { columnsUsed } from './uses.ts';

/** A computed column whose formula fits the columns it stands among. */
export interface Formula extends Resolved {
  readonly definition: ComputedDefinition;
  /** The formula's tree as it was written. */
  readonly written: Node;
  /** The columns it is made from, those that its relations go by included, with their places in the formula. */
  readonly needs: ReadonlyMap<string, Place>;
}

/** The columns that formulas stand among. */
export interface Surroundings {
  readonly measured: ReadonlyMap<string, { readonly kind: Kind; readonly unit: string }>;
  readonly relations: readonly Relation[];
  /** The formulas that fitted before: those that nothing has changed for are taken over. */
  readonly known: ReadonlyMap<string, Formula>;
}

/**
 * Checks formulas in an order in which each comes after all that it needs.
 * @param definitions  every computed column, in any order
 * @returns the formulas by name in that order
 * @throws FormulaError where one can't be used: as it says itself, because it leads round in a loop, or because
 *   it stood on a column that is another now
 */
export function fitFormulas(
  definitions: readonly ComputedDefinition[],
  { measured, relations, known }: Surroundings,
): Map<string, Formula> {
  const names = [...measured.keys(), ...definitions.map(({ name }) => name)];
  const isNew = (definition: ComputedDefinition) => known.get(definition.name)?.definition !== definition;
  const added = definitions.filter(isNew);
  const about = (name: string) => (added.length > 1 ? name : undefined);

  const drafts = new Map<string, Pick<Formula, 'definition' | 'written' | 'needs'>>();
  for (const definition of definitions) {
    const { name, formula } = definition;
    const written = isNew(definition) ? told(about(name), () => parse(formula)) : known.get(name)!.written;
    drafts.set(name, { definition, written, needs: columnsUsed(written, relations, names) });
  }
  const computedNeeds = (name: string) => [...drafts.get(name)!.needs.keys()].filter((needed) => drafts.has(needed));
  const found = dependencyOrder(drafts.keys(), computedNeeds);
  if ('loop' in found) throw loopError(found.loop, (name) => drafts.get(name)!, isNew);

  const fitted = new Map<string, Formula>();
  const changed = new Set<string>();
  const scope = { names, relations, column: (name: string) => measured.get(name) ?? fitted.get(name)! };
  for (const name of found.order) {
    const draft = drafts.get(name)!;
    const { definition, written } = draft;
    const before = known.get(name);
    const needs = [...draft.needs.keys()];
    const untouched = before && !isNew(definition) && !needs.some((needed) => changed.has(needed));
    if (untouched && needs.every((needed) => before.needs.has(needed)) && before.needs.size === needs.length) {
      fitted.set(name, before);
      continue;
    }
    const check = () => resolve(written, scope, definition.unit);
    const resolved = isNew(definition) ? told(about(name), check) : blamed(added, name, check);
    if (resolved.unit !== before?.unit || resolved.kind !== before.kind) changed.add(name);
    fitted.set(name, { ...resolved, ...draft });
  }
  return fitted;
}

/** Says which of several formulas an error is about. */
function told<T>(about: string | undefined, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (about === undefined || !(error instanceof FormulaError)) throw error;
    throw new FormulaError(`${about}: ${error.message}`, error.start, error.end);
  }
}

/** A formula that fitted before and doesn't now: the fault lies with the new ones. */
function blamed<T>(added: readonly ComputedDefinition[], name: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (!(error instanceof FormulaError)) throw error;
    throw new FormulaError(say`${name} would no longer work: ${error.message}`, 0, added[0]?.formula.length ?? 0);
  }
}

function loopError(
  loop: readonly string[],
  draft: (name: string) => Pick<Formula, 'definition' | 'needs'>,
  isNew: (definition: ComputedDefinition) => boolean,
): FormulaError {
  const turn = loop.findIndex((name) => isNew(draft(name).definition));
  const members = loop.slice(0, -1);
  const turned = [...members.slice(turn), ...members.slice(0, turn), members[turn]];
  const [name, next] = turned;
  const { start, end } = draft(name).needs.get(next)!;
  return new FormulaError(
    say`${name} would be made from itself: ${loopInWords(turned)} (characters ${start} to ${end}). Use a column that is not made from ${name}`,
    start,
    end,
  );
}

import { say } from '../../words/say.ts';
import type { Kind } from '../column.ts';
import { parseUnit, type Unit } from '../dimension.ts';
import { complaint } from './complaint.ts';
import { excerpt } from './print.ts';
import { FormulaError, type Node } from './syntax.ts';

/** A resolved node with what is known of its values. */
export interface Typed {
  readonly node: Node;
  readonly kind: Kind;
  readonly unit: Unit;
  /** A number without a unit of its own: beside a dimensioned value it takes that value's unit. */
  readonly bare: boolean;
}

/** What each kind is called in an error. */
export const kindWords: Readonly<Record<Kind, string>> = {
  number: say`a number`,
  date: say`a date`,
  boolean: say`a yes/no`,
  text: say`text`,
};

/** What a value is, in an error: its unit, or its kind where that says more. */
export function worded({ kind, unit }: Typed): string {
  return kind !== 'number' ? kindWords[kind] : unit.code === '1' ? say`a pure number` : unit.code;
}

/** Whether it is `missing()`, which goes with every kind. */
export function isMissing({ node }: Typed): boolean {
  return node.kind === 'number' && Number.isNaN(node.value);
}

/** A number that is written out, with its sign; `NaN` for anything else. */
export function constant(node: Node): number {
  if (node.kind === 'number') return node.value;
  if (node.kind === 'unary' && node.operator === '-') return -constant(node.operand);
  return Number.NaN;
}

/** The unit of that code; a code that is none is an error at this place. */
export function unitFrom(code: string, at: Node): Unit {
  try {
    return parseUnit(code);
  } catch (error) {
    throw new FormulaError((error as TypeError).message, at.start, at.end);
  }
}

/** The unit that a text in a formula names. */
export function namedUnit(node: Node): Unit {
  if (node.kind === 'text') return unitFrom(node.value, node);
  throw complaint(node, say`${excerpt(node)} is no unit`, say`Write its code in quotes, as in 'mm'`);
}

/** @throws FormulaError where a value is of none of the kinds that `what` takes */
export function expectKind(x: Typed, written: Node, kinds: readonly Kind[], what: string): void {
  if (kinds.includes(x.kind) || isMissing(x)) return;
  const wanted = kinds.map((kind) => kindWords[kind]).join(say` or `);
  throw complaint(
    written,
    say`${excerpt(written)} is ${kindWords[x.kind]}, and ${what} takes ${wanted}`,
    x.kind === 'boolean'
      ? say`To count with it, write ${excerpt(written)} ? 1 : 0`
      : kinds.includes('boolean')
        ? say`Compare it with something, as in x > 5`
        : x.kind === 'date'
          ? say`Take a difference of dates for a number of days`
          : say`Choose another column`,
  );
}
